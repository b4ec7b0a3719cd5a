"""Which language the window speaks: chosen in the menu, else the system's, else English.

English stands in the code; each other language is a file in ``gui/translations``. Reports, exports
and the command line stay in English.
"""

from importlib.resources import files

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, Qt, QTranslator
from PySide6.QtGui import QGuiApplication

#: Code and own name of every language that the window speaks, English first.
LANGUAGES = {"en": "English", "es": "Español"}

#: Stands for "as the system" in the settings.
SYSTEM = ""


def language_for(chosen: str, system: QLocale) -> str:
    """Return the code of the language to speak.

    Parameters
    ----------
    chosen
        A code of LANGUAGES, or SYSTEM; another one counts as SYSTEM.
    system
        What the system says; its languages in their order, a country's variety as the language.
    """
    if chosen in LANGUAGES:
        return chosen
    spoken = [name.replace("_", "-").partition("-")[0] for name in system.uiLanguages()]
    return next((code for code in spoken if code in LANGUAGES), "en")


def install_language(application: QCoreApplication, chosen: str) -> tuple[QTranslator, ...]:
    """Let a language be in force for windows made from now on; return its translators.

    They live as long as the application, which is their parent.
    """
    code = language_for(chosen, QLocale.system())
    locale = QLocale.system()
    if locale.language() != QLocale(code).language():
        locale = QLocale(code)
    QLocale.setDefault(locale)
    if isinstance(application, QGuiApplication):
        right_to_left = locale.textDirection() == Qt.LayoutDirection.RightToLeft
        kinds = Qt.LayoutDirection
        application.setLayoutDirection(kinds.RightToLeft if right_to_left else kinds.LeftToRight)
    if code == "en":
        return ()
    places = (
        ("qtbase", QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)),
        ("thawline", str(files("gui") / "translations")),
    )
    loaded = []
    for name, folder in places:
        translator = QTranslator(application)
        if translator.load(f"{name}_{code}", folder):
            application.installTranslator(translator)
            loaded.append(translator)
    return tuple(loaded)
