"""Language of the window: the one chosen in the menu, else the system's, else English.

English texts are in the code; every other language is a file in ``gui/translations``. Exports and
the command line stay in English; a report is written in any of them.
"""

from importlib.resources import files

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, Qt, QTranslator
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget

#: Code and native name of every supported language, English first.
LANGUAGES = {"en": "English", "es": "Español"}

#: Setting that follows the system's language.
SYSTEM = ""


def language_for(chosen: str, system: QLocale) -> str:
    """Return the code of the language to use.

    Parameters
    ----------
    chosen
        A code of LANGUAGES, or SYSTEM; another one counts as SYSTEM.
    system
        The system's locale; its languages in their order, regional variants as the language.
    """
    if chosen in LANGUAGES:
        return chosen
    codes = [name.replace("_", "-").partition("-")[0] for name in system.uiLanguages()]
    return next((code for code in codes if code in LANGUAGES), "en")


def language_in_force(chosen: str) -> str:
    """Return the code of the language that the window speaks with this setting."""
    return language_for(chosen, QLocale.system())


def language_shown() -> str:
    """Return the code of the language that the windows made now speak."""
    code = QLocale().name().partition("_")[0]
    return code if code in LANGUAGES else "en"


def mark_as_english(shown: QWidget) -> None:
    """Tell screen readers that a text is in English, whatever language the window speaks."""
    shown.setLocale(QLocale(QLocale.Language.English))


def install_language(application: QCoreApplication, chosen: str) -> tuple[QTranslator, ...]:
    """Use a language for windows made from now on, in place of the one before.

    Returns
    -------
    tuple of QTranslator
        Its translators, which belong to the application.
    """
    for former in application.findChildren(QTranslator):
        application.removeTranslator(former)
        former.deleteLater()
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
