"""Wording of the safety pages: screening before measuring, emergencies first, no treatment.

The signs are those that public health services and shoulder surgeons' societies ask about before
exercising a painful shoulder; the wording is the project's own.
"""

from dataclasses import dataclass, replace

from gui.protocol.red_flags import ScreeningAnswer, ScreeningPage
from gui.text.wording import tr


@dataclass(frozen=True, slots=True, kw_only=True)
class ScreeningText:
    """Text of one page: its heading, a whole question or statement, the list, the conclusion.

    Attributes
    ----------
    strong
        For each item of a list the phrases that the eye looks for, with bars between.
    numbers
        Numbers to call, each with where it holds.
    """

    title: str
    items: tuple[str, ...]
    heading: str = ""
    close: str = ""
    alarming: bool = False
    strong: tuple[str, ...] = ()
    numbers: tuple[tuple[str, str], ...] = ()


def screening_text(page: ScreeningPage, *, clinic: bool = False) -> ScreeningText:
    """Return the text of a page, said to the person, or to a clinician about a patient.

    The signs themselves speak to nobody, so that they read the same in both.
    """
    text = {
        ScreeningPage.ABOUT: _about,
        ScreeningPage.EMERGENCY: _emergency,
        ScreeningPage.SOON: _soon,
        ScreeningPage.CLINICIAN: _clinician,
        ScreeningPage.CLEAR: _clear,
        ScreeningPage.STOP_EMERGENCY: _stop_emergency,
        ScreeningPage.STOP_SOON: _stop_soon,
        ScreeningPage.STOP_CLINICIAN: _stop_clinician,
    }[page]()
    return _about_patient(page, text) if clinic else text


def _about_patient(page: ScreeningPage, text: ScreeningText) -> ScreeningText:
    """Return a page as it is said to a clinician."""
    asked = replace(text, heading=tr("Ask the patient"))
    if page is ScreeningPage.EMERGENCY:
        return asked
    if page is ScreeningPage.SOON:
        close = tr(
            "If any of these apply, have it looked into within a few days, before measuring."
        )
        return replace(asked, title=tr("Do any of these apply?"), close=close)
    if page is ScreeningPage.CLINICIAN:
        close = tr("If any of these apply, decide first whether the patient can be measured.")
        return replace(asked, title=tr("Do any of these apply?"), close=close)
    if page is ScreeningPage.STOP_CLINICIAN:
        return replace(
            text,
            title=tr("Can the patient be measured?"),
            items=(
                tr(
                    "The patient would raise and turn the arm slowly, without help, and stop "
                    "before it becomes painful."
                ),
            ),
        )
    if page is ScreeningPage.STOP_SOON:
        return replace(text, title=tr("Please have this looked into within a few days."))
    if page is ScreeningPage.CLEAR:
        items = (
            tr("That hurt more than it should."),
            tr("What was measured is saved. Carry on another day."),
        )
        return replace(text, title=tr("Let the patient's arm rest."), items=items)
    return text


def answer_text(answer: ScreeningAnswer, *, clinic: bool = False) -> str:
    """Return the text of an answer's button."""
    if clinic and answer is ScreeningAnswer.CLINICIAN_AGREES:
        return tr("The patient can be measured")
    return {
        ScreeningAnswer.NONE_FITS: tr("None of these"),
        ScreeningAnswer.ONE_FITS: tr("Yes, at least one"),
        ScreeningAnswer.CLINICIAN_AGREES: tr("My clinician agrees"),
    }[answer]


def _about() -> ScreeningText:
    return ScreeningText(
        title=tr("What this is, and what it is not"),
        items=(
            tr("In an emergency, stop and call the emergency number."),
            tr("Thawline estimates by camera how far a shoulder moves, week by week."),
            tr("It is not a medical device: no diagnosis, and no advice on treatment."),
            tr("Its numbers can be off by several degrees, so each comes with a range."),
            tr("There is no target to reach. Stop before it becomes painful."),
            tr("Pictures never leave this computer and are not saved."),
        ),
    )


def _emergency() -> ScreeningText:
    return ScreeningText(
        heading=tr("Signs of an emergency"),
        title=tr("Do any of these apply right now?"),
        items=(
            tr(
                "Chest pain, pressure or tightness, or pain spreading to the jaw, neck, back or "
                "arm, especially with breathlessness, sweating or feeling sick. This applies "
                "whichever shoulder hurts."
            ),
            tr("A drooping face, slurred speech, or an arm or leg that is suddenly weak or numb."),
            tr(
                "Newly unsteady legs or clumsy hands, or new trouble controlling the bladder or "
                "bowels."
            ),
            tr("A shoulder that has been out of shape since an injury, or may be broken."),
            tr("A shoulder that has been locked since a seizure or an electric shock."),
            tr(
                "A hot, red and swollen joint, or a fever and feeling ill. With a weakened "
                "immune system, or after a recent injection into the joint, new heat or a "
                "fever alone is enough."
            ),
            tr("An arm that is cold, pale, blue or suddenly swollen."),
            tr("Shortness of breath after an operation, or after a long time lying still."),
            tr(
                "Pain at the tip of the shoulder together with tummy pain, or with a possible "
                "pregnancy."
            ),
            tr("Both shoulders stiff, with a new headache, a tender scalp or worsening eyesight."),
        ),
        strong=(
            tr("Chest pain, pressure or tightness|jaw, neck, back or arm"),
            tr("drooping face|slurred speech|weak or numb"),
            tr("unsteady legs|clumsy hands|bladder or bowels"),
            tr("out of shape|broken"),
            tr("locked"),
            tr("hot, red and swollen|fever"),
            tr("cold, pale, blue or suddenly swollen"),
            tr("Shortness of breath"),
            tr("tip of the shoulder|tummy pain|pregnancy"),
            tr("Both shoulders stiff|headache"),
        ),
        close=tr("If any of these apply, do not measure. Get help now."),
        alarming=True,
    )


def _soon() -> ScreeningText:
    return ScreeningText(
        heading=tr("Signs that need a clinician soon"),
        title=tr("Do any of these apply to you?"),
        items=(
            tr("A history of cancer, a new lump or swollen glands, or unexplained weight loss."),
            tr(
                "Constant pain, day and night, that no position or rest eases. (Night pain alone "
                "is usual with a stiff shoulder.)"
            ),
            tr("Unable to lift the arm since an injury."),
            tr("Weakness, numbness or muscle wasting, getting worse from week to week."),
            tr("A hand that is swollen or shiny, or has changed colour."),
            tr(
                "A hoarse voice or a cough that does not go away, or one hand getting thinner, "
                "especially in anyone who smokes or used to smoke."
            ),
            tr("Rapid worsening, or several swollen joints."),
        ),
        strong=(
            tr("cancer|lump or swollen glands|weight loss"),
            tr("Constant pain"),
            tr("Unable to lift the arm"),
            tr("Weakness, numbness or muscle wasting"),
            tr("swollen or shiny|changed colour"),
            tr("hoarse voice or a cough|one hand getting thinner"),
            tr("Rapid worsening|several swollen joints"),
        ),
        close=tr("If any of these apply, see a clinician within a few days, before you measure."),
    )


def _clinician() -> ScreeningText:
    return ScreeningText(
        heading=tr("Reasons to check with your clinician first"),
        title=tr("Do any of these apply to you?"),
        items=(
            tr(
                "An operation, a fracture, a dislocation or another injury of the shoulder "
                "within the last twelve weeks."
            ),
            tr("A shoulder that has come out of its joint at some time."),
            tr("A surgeon's advice to limit how the arm is moved."),
            tr("A recent injection, with the advice to rest the shoulder."),
            tr("A recent pacemaker or lead implant, or breast or armpit surgery."),
            tr("Pain that comes on with moving the neck, or tingling below the elbow."),
            tr("A stroke or a nerve disease that affects the arm."),
            tr(
                "A tendency to fall. One movement is done standing, with the back to the screen "
                "and nothing to hold on to."
            ),
        ),
        strong=(
            tr("operation, a fracture, a dislocation"),
            tr("come out of its joint"),
            tr("limit how the arm is moved"),
            tr("recent injection"),
            tr("pacemaker or lead implant|breast or armpit surgery"),
            tr("neck|tingling"),
            tr("stroke or a nerve disease"),
            tr("tendency to fall"),
        ),
        close=tr("If any of these apply, first ask the clinician who treats you."),
    )


def _clear() -> ScreeningText:
    return ScreeningText(
        title=tr("Let the arm rest."),
        items=(
            tr("That hurt more than it should."),
            tr("What was measured is saved. Carry on another day."),
            tr("If it does not ease, ask your clinician."),
        ),
    )


def _stop_emergency() -> ScreeningText:
    return ScreeningText(
        title=tr("Get help now."),
        items=(
            tr("Call the local emergency number."),
            tr("Do not wait to see whether it passes. If you are unsure, call."),
            tr("Please do not measure today."),
        ),
        numbers=(
            ("112", tr("Europe")),
            ("911", tr("North America")),
            ("999", tr("United Kingdom")),
        ),
        alarming=True,
    )


def _stop_soon() -> ScreeningText:
    return ScreeningText(
        title=tr("Please see a clinician within a few days."),
        items=(
            tr("Usually the reason is harmless, but a clinician should look at it first."),
            tr("If it suddenly gets worse, call the emergency number."),
        ),
    )


def _stop_clinician() -> ScreeningText:
    return ScreeningText(
        title=tr("Ask your clinician first."),
        items=(
            tr(
                "Tell them what you would do here: raise and turn your arm slowly, by yourself, "
                "and stop before it becomes painful."
            ),
        ),
    )
