"""Bands: a refusal is an empty frame with its reason, long words take more lines."""

from PySide6.QtCore import QCoreApplication, QEvent

from gui.pages.clips.measurement_band import BandContent, MeasurementBand
from gui.style.appearance import Appearance
from measure.domain.movements import Movement


def coloured(appearance: Appearance, band: MeasurementBand, name: str) -> int:
    """Return how many pixels of the band have a colour of the palette."""
    image = band.grab().toImage()
    wanted = appearance.colour(name)
    return sum(
        image.pixelColor(x, y) == wanted
        for x in range(image.width())
        for y in range(image.height())
    )


def test_a_refusal_is_an_empty_frame_with_its_reason(appearance: Appearance) -> None:
    band = MeasurementBand(appearance)
    band.resize(300, 90)
    band.show_reading(Movement.FLEXION, BandContent(words="No still hold was seen."))
    assert band.accessibleName() == "No still hold was seen."
    assert coloured(appearance, band, "arm") == 0
    assert coloured(appearance, band, "edge") > 100
    band.show_reading(Movement.FLEXION, BandContent(words="118", value=118, low=110, high=126))
    assert coloured(appearance, band, "arm") > 10


def test_long_words_make_the_band_higher(appearance: Appearance) -> None:
    band = MeasurementBand(appearance)
    band.show_reading(Movement.FLEXION, BandContent(words="short"))
    low = band.heightForWidth(200)
    band.show_reading(Movement.FLEXION, BandContent(words="a much longer reason " * 6))
    assert band.heightForWidth(200) > low > band.heightForWidth(2000) - band.height()


def test_a_band_says_what_its_interval_rests_on(appearance: Appearance) -> None:
    band = MeasurementBand(appearance)
    band.show_reading(Movement.FLEXION, BandContent(words="118", rests_on="On real people."))
    assert (band.toolTip(), band.accessibleDescription()) == ("On real people.",) * 2
    band.show_reading(Movement.FLEXION, BandContent(words="No still hold was seen."))
    assert (band.toolTip(), band.accessibleDescription()) == ("", "")


def test_a_band_that_is_gone_follows_no_change_of_the_text_size(appearance: Appearance) -> None:
    shown, gone = MeasurementBand(appearance), MeasurementBand(appearance)
    gone.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    before = shown.sizeHint().height()
    appearance.choose(percent=200)  # an exception in a slot fails the test
    appearance.window_resized.emit()
    assert shown.sizeHint().height() > before
