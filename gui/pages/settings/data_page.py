"""The pages of people and data, by name, with their titles."""

from enum import StrEnum

from gui.text.wording import tr


class DataPage(StrEnum):
    """A page that the settings and the menu lead to."""

    PEOPLE = "people"
    TRANSFER = "transfer"
    BACKUP = "backup"
    SAVED = "saved"
    MODEL = "model"


def data_page_line(page: DataPage) -> str:
    """Return what can be done on a page."""
    return {
        DataPage.PEOPLE: tr("Add, edit, choose or delete people."),
        DataPage.TRANSFER: tr("Results as a file, and back from a file."),
        DataPage.BACKUP: tr("Everything in one file, and how to restore it."),
        DataPage.SAVED: tr("What, where, how long, and who can read it."),
        DataPage.MODEL: tr("The model that finds the body in the picture."),
    }[page]


def data_page_title(page: DataPage) -> str:
    return {
        DataPage.PEOPLE: tr("People"),
        DataPage.TRANSFER: tr("Export and import"),
        DataPage.BACKUP: tr("Backup and restore"),
        DataPage.SAVED: tr("What is saved"),
        DataPage.MODEL: tr("Body tracking"),
    }[page]
