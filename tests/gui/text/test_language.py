"""Language of the window: which one is used, for its own texts and for Qt's dialogs."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QLocale, QTranslator
from PySide6.QtWidgets import QApplication

from gui.text.language import SYSTEM, install_language, language_for
from gui.text.wording import tr


@pytest.mark.parametrize(
    ("chosen", "system", "spoken"),
    [
        (SYSTEM, "es_MX", "es"),
        (SYSTEM, "es", "es"),
        (SYSTEM, "fr_FR", "en"),
        (SYSTEM, "en_GB", "en"),
        ("es", "en_GB", "es"),
        ("en", "es_ES", "en"),
        ("no such language", "es_ES", "es"),
    ],
)
def test_the_chosen_language_comes_first_then_the_systems(
    chosen: str, system: str, spoken: str
) -> None:
    assert language_for(chosen, QLocale(system)) == spoken


@pytest.fixture
def as_before(qapp: QApplication) -> Iterator[None]:
    """Put language, locale and direction back as they were."""
    locale, direction = QLocale(), qapp.layoutDirection()
    yield
    for translator in qapp.findChildren(QTranslator):
        qapp.removeTranslator(translator)
    QLocale.setDefault(locale)
    qapp.setLayoutDirection(direction)


def test_spanish_is_spoken_by_the_window_and_by_qts_own_dialogs(
    qapp: QApplication, as_before: None
) -> None:
    assert tr("Close") == "Close"
    assert len(install_language(qapp, "es")) == 2
    assert tr("Close") == "Cerrar"
    assert qapp.translate("QPlatformTheme", "Cancel") == "Cancelar"
