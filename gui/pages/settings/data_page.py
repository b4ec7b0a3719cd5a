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


def data_page_title(page: DataPage) -> str:
    return {
        DataPage.PEOPLE: tr("People"),
        DataPage.TRANSFER: tr("Export and import"),
        DataPage.BACKUP: tr("Backup and restore"),
        DataPage.SAVED: tr("What is saved"),
        DataPage.MODEL: tr("Body tracking"),
    }[page]
