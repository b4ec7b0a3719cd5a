"""Wording of the safety pages: screening before measuring, emergencies first, no treatment.

The signs are those that public health services and shoulder surgeons' societies ask about before
exercising a painful shoulder; the wording is the project's own.
"""

from dataclasses import dataclass

from gui.protocol.red_flags import ScreeningAnswer, ScreeningPage
from gui.text.wording import tr


@dataclass(frozen=True, slots=True, kw_only=True)
class ScreeningText:
    """Text of one page: a question or statement, its list, and the conclusion."""

    title: str
    items: tuple[str, ...]
    close: str = ""
    alarming: bool = False


def screening_text(page: ScreeningPage) -> ScreeningText:
    """Return the text of a page."""
    return {
        ScreeningPage.ABOUT: _about,
        ScreeningPage.EMERGENCY: _emergency,
        ScreeningPage.SOON: _soon,
        ScreeningPage.CLINICIAN: _clinician,
        ScreeningPage.CLEAR: _clear,
        ScreeningPage.STOP_EMERGENCY: _stop_emergency,
        ScreeningPage.STOP_SOON: _stop_soon,
        ScreeningPage.STOP_CLINICIAN: _stop_clinician,
    }[page]()


def answer_text(answer: ScreeningAnswer) -> str:
    """Return the text of an answer's button."""
    return {
        ScreeningAnswer.READ: tr("I have read this"),
        ScreeningAnswer.NONE_FITS: tr("None of these fits"),
        ScreeningAnswer.ONE_FITS: tr("One of these fits"),
        ScreeningAnswer.CLINICIAN_AGREES: tr("A clinician agrees that I measure"),
    }[answer]


def _about() -> ScreeningText:
    return ScreeningText(
        title=tr("What this is, and what it is not"),
        items=(
            tr("In an emergency, leave this and call the emergency number."),
            tr(
                "Thawline watches an arm through the camera and estimates how far the shoulder "
                "moves. You can follow that over weeks and take it to an appointment."
            ),
            tr(
                "It is not a medical device. It does not find out what is wrong with a shoulder "
                "and gives no advice on treatment."
            ),
            tr(
                "Its numbers can be off by several degrees. Each says how sure it is, and often "
                "the honest answer is that it cannot tell."
            ),
            tr("There is nothing to reach here. Stop before it becomes painful."),
            tr("Pictures stay in this computer and are dropped at once. No video is kept."),
        ),
    )


def _emergency() -> ScreeningText:
    return ScreeningText(
        title=tr("Does one of these fit you now?"),
        items=(
            tr(
                "Pain or tightness in the chest, the jaw or the left arm; short of breath or "
                "sweating. Whichever shoulder hurts."
            ),
            tr("An injury after which the shoulder looks out of shape or may be broken."),
            tr("The shoulder has been locked since a seizure or an electric shock."),
            tr("The joint is hot, red and swollen, or you have a fever and feel ill."),
            tr("The arm has suddenly become very weak or numb, or you cannot use it."),
            tr("The arm is cold, pale, blue or suddenly swollen."),
            tr("Short of breath after an operation, or after lying still for long."),
            tr("Pain at the tip of the shoulder with pain in the belly, or while maybe pregnant."),
            tr("Both shoulders stiff, with a new headache, a tender scalp or worse sight."),
        ),
        close=tr("Then do not measure. Get help at once."),
        alarming=True,
    )


def _soon() -> ScreeningText:
    return ScreeningText(
        title=tr("Or one of these?"),
        items=(
            tr("You have or had cancer; a new lump or swollen glands; weight lost unintended."),
            tr("Pain at night that never lets up."),
            tr("Since an injury you cannot lift the arm."),
            tr("Weakness, numbness or thinning of muscles that grows from week to week."),
            tr("It is getting worse fast, or several joints are swollen."),
        ),
        close=tr("Then see a clinician within days, before you measure."),
    )


def _clinician() -> ScreeningText:
    return ScreeningText(
        title=tr("And one of these?"),
        items=(
            tr(
                "An operation, a fracture, a dislocation or another injury of the shoulder "
                "within the last twelve weeks."
            ),
            tr("A surgeon's limits for the arm still hold."),
            tr("An injection lately, and you were told to rest."),
            tr("A pacemaker or its wires put in lately; an operation on breast or armpit."),
            tr("Moving the neck brings on the pain, or it tingles below the elbow."),
        ),
        close=tr("Then ask the clinician who treats you first."),
    )


def _clear() -> ScreeningText:
    return ScreeningText(
        title=tr("Let the arm rest."),
        items=(
            tr("That hurt more than measuring should."),
            tr("What was measured is kept. Another day is as good as today."),
        ),
    )


def _stop_emergency() -> ScreeningText:
    return ScreeningText(
        title=tr("Get help now."),
        items=(
            tr(
                "Call the emergency number: 112 in Europe, 911 in North America, 999 in the "
                "United Kingdom, or the one where you are."
            ),
            tr("Do not wait to see whether it passes. If you are unsure, call."),
            tr("Please do not measure today. What was measured before is kept."),
        ),
        alarming=True,
    )


def _stop_soon() -> ScreeningText:
    return ScreeningText(
        title=tr("Please see a clinician within days."),
        items=(
            tr("Most often there is a harmless reason, but somebody should look at it first."),
            tr("If it gets worse suddenly, call the emergency number."),
        ),
    )


def _stop_clinician() -> ScreeningText:
    return ScreeningText(
        title=tr("Please ask the clinician who treats you first."),
        items=(
            tr(
                "Say what you would do here: raise and turn the arm by yourself, slowly, and "
                "stop before it becomes painful."
            ),
        ),
    )
