"""Wording of the guided session: the sentence that is shown and spoken at each moment."""

from gui.protocol.plan import (
    Attempt,
    AttemptState,
    SessionPlan,
    SessionStep,
    TaskResult,
    faces_away_from_screen,
)
from gui.text.wording import range_words, task_title, tr, value_words
from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reasons import Reason
from measure.live.events import LiveFrame, Phase, SetupHint


def start_position_sentence(movement: Movement, side: Side) -> str:
    """Return how to stand for the movement, with the side named where it matters.

    Whole sentences for each side: in other languages the side's word bends with its noun.
    """
    left, right = MOVEMENTS[movement].start
    return tr(left if side is Side.LEFT else right)


def position_seen_from_screen(guide: SessionPlan) -> str:
    """Return how to stand for the task at hand; nothing where one faces away from the screen."""
    task = guide.task
    away = faces_away_from_screen(task.movement)
    return "" if away else start_position_sentence(task.movement, task.side)


def change_of_arm(guide: SessionPlan) -> str:
    """Return that the other arm is to move now; nothing where it is the one of before."""
    if not guide.changes_arm:
        return ""
    return tr("Left arm now.") if guide.task.side is Side.LEFT else tr("Right arm now.")


def beginning_sentence(guide: SessionPlan) -> str:
    """Return how to stand for the task at hand, after a word about a change of arm."""
    how = start_position_sentence(guide.task.movement, guide.task.side)
    return f"{change_of_arm(guide)} {how}".lstrip()


def expected_sentences(guide: SessionPlan) -> tuple[str, ...]:
    """Return what is said in the course of a task when nothing is amiss."""
    return (
        start_position_sentence(guide.task.movement, guide.task.side),
        move_sentence(guide.task.movement),
        tr("Hold it there, gently."),
        tr("Let the arm come back."),
        tr("Rest your arm while the result is calculated."),
        tr("Rest. Begin again when you are ready."),
    )


def move_sentence(movement: Movement) -> str:
    """Return how to move: short, as it is read while moving, and without urging."""
    return tr(MOVEMENTS[movement].move)


def live_sentence(guide: SessionPlan, frame: LiveFrame | None, trouble: SourceFault | None) -> str:
    """Return what to do at this moment of a movement."""
    task = guide.task
    if trouble is not None:
        return trouble_sentence(trouble)
    if guide.is_ending and guide.stopped_for_pain:
        return tr("Lower the arm. You will be asked about the pain.")
    if guide.is_ending:
        return tr("Lower the arm. What was captured is being calculated.")
    if guide.paused:
        return tr("Paused. Let the arm rest.")
    phase = frame.phase if frame else Phase.OPENING
    if phase is Phase.SEARCHING_FOR_PERSON and frame and frame.setup_hints:
        return hint_sentence(frame.setup_hints[0])
    plain = {
        Phase.OPENING: tr("Opening the camera."),
        Phase.SEARCHING_FOR_PERSON: tr("Stand where the camera sees you from head to hips."),
        Phase.WAIT_NEUTRAL: (
            start_position_sentence(task.movement, task.side)
            if guide.attempts
            else beginning_sentence(guide)
        ),
        Phase.MOVE: move_sentence(task.movement),
        Phase.HOLD: tr("Hold it there, gently."),
        Phase.RETURN: tr("Let the arm come back."),
        Phase.REFINING: tr("Rest your arm while the result is calculated."),
        Phase.REST: rest_sentence(guide),
        Phase.PAUSED: tr("Paused. Let the arm rest."),
        Phase.TROUBLE: tr("One moment, please."),
        Phase.DONE: tr("Done. Let the arm rest."),
    }
    return plain[phase]


def rest_sentence(guide: SessionPlan) -> str:
    """Return what to do between two trials, or why the last one was refused."""
    refused = guide.last_refusal
    if refused is not None and refused.refused_for:
        why = ", ".join(map(reason_phrase, refused.refused_for))
        return tr("Not counted: {why}.").format(why=why)
    return tr("Rest. Begin again when you are ready.")


def kind_words(attempt: Attempt, unit: Unit) -> str:
    """Return what kind of number is shown: still calculated, measured, final, or practice."""
    trial = attempt.trial
    if attempt.state is AttemptState.PRACTICE:
        return tr("practice")
    if trial is None:
        return tr("being calculated")
    if trial.low is None or trial.high is None:
        return tr("measured")
    if unit is not Unit.DEGREES:
        return tr("final, {range}").format(range=range_words(trial.low, trial.high, unit))
    low, high = (value_words(end, unit) for end in (trial.low, trial.high))
    return tr("final, {low} to {high}").format(low=low, high=high)


def hint_sentence(hint: SetupHint) -> str:
    """Return what to change about position, camera or light."""
    return {
        SetupHint.STEP_BACK: tr("Step back a little."),
        SetupHint.COME_CLOSER: tr("Come a little closer."),
        SetupHint.STEP_LEFT: tr("Step a little to your left."),
        SetupHint.STEP_RIGHT: tr("Step a little to your right."),
        SetupHint.RAISE_SCREEN: tr("Raise the screen."),
        SetupHint.LOWER_SCREEN: tr("Lower the screen."),
        SetupHint.LEVEL_CAMERA: tr("The camera is tilted. Set it level."),
        SetupHint.MORE_LIGHT: tr("More light, please."),
        SetupHint.LIGHT_FROM_FRONT: tr("The light is behind you. Move the light or close a blind."),
    }[hint]


def reason_phrase(reason: Reason) -> str:
    """Return a reason in a few words, legible from across the room."""
    return {
        Reason.NOBODY: tr("no one in view"),
        Reason.OTHER_PERSON: tr("someone else in view"),
        Reason.TWO_PEOPLE: tr("two people in view"),
        Reason.PERSON_LOST: tr("lost from view"),
        Reason.MOVED_FAST: tr("move more slowly and stay upright"),
        Reason.UNREADABLE_FRAMES: tr("damaged pictures"),
        Reason.LOW_FRAME_RATE: tr("too few pictures per second"),
        Reason.TURNED_PICTURE: tr("head not above the hips"),
        Reason.WRONG_VIEW: tr("stand as the drawing shows"),
        Reason.FACING_CAMERA: tr("turn your back to the camera"),
        Reason.TRUNK_OBLIQUE: tr("turn squarely to the camera"),
        Reason.WRONG_TURN: tr("turn halfway to the side"),
        Reason.FAR_ARM: tr("turn your other side to the camera"),
        Reason.OUT_OF_PICTURE: tr("out of the picture"),
        Reason.HIDDEN: tr("arm or hips not seen clearly"),
        Reason.HAND_NOT_BEHIND: tr("hand not seen behind the back"),
        Reason.LIMB_LENGTH: tr("arm not seen reliably"),
        Reason.SIDES_EXCHANGED: tr("left and right mixed up"),
        Reason.ELBOW_BENT: tr("the elbow was bent"),
        Reason.ELBOW_NOT_SQUARE: tr("the elbow was not at 90\u00b0"),
        Reason.ELBOW_OFF_TRUNK: tr("the elbow moved from your side"),
        Reason.TRUNK_LEAN: tr("the body leaned"),
        Reason.TRUNK_TURNED: tr("the body turned"),
        Reason.OUT_OF_PLANE: tr("the arm moved out of line"),
        Reason.SHRUG: tr("the shoulder hitched up"),
        Reason.OTHER_ARM_RAISED: tr("the other arm was raised too"),
        Reason.NO_FACING_STANCE: tr("face the camera first, then turn"),
        Reason.NO_ZERO_POSE: tr("begin with the forearm straight ahead"),
        Reason.NO_NEUTRAL: tr("no rest before the movement"),
        Reason.NO_MOVE: tr("no movement seen"),
        Reason.LITTLE_MOVEMENT: tr("hardly any movement"),
        Reason.NO_HOLD: tr("not still for a second"),
        Reason.UNSTEADY_HOLD: tr("not quite still"),
        Reason.PASSES_DISAGREE: tr("not seen clearly enough"),
        Reason.IMPOSSIBLE_VALUE: tr("more than a shoulder can do"),
        Reason.TOO_UNCERTAIN: tr("too uncertain to use"),
        Reason.FEW_TRIALS: tr("too few trials"),
        Reason.SPREAD_TRIALS: tr("the trials differ"),
    }[reason]


def correction(reason: Reason) -> str:
    """Return what to do about a fault of the movement, in a line read from afar; or nothing."""
    return {
        Reason.MOVED_FAST: tr("Move more slowly."),
        Reason.WRONG_VIEW: tr("Stand as the drawing shows."),
        Reason.FACING_CAMERA: tr("Turn your back to the camera."),
        Reason.TRUNK_OBLIQUE: tr("Turn squarely to the camera."),
        Reason.WRONG_TURN: tr("Turn halfway to the side."),
        Reason.FAR_ARM: tr("Turn your other side to the camera."),
        Reason.OUT_OF_PICTURE: tr("Step back a little."),
        Reason.ELBOW_BENT: tr("Elbow straight, gently."),
        Reason.ELBOW_NOT_SQUARE: tr("Elbow at a right angle."),
        Reason.ELBOW_OFF_TRUNK: tr("Elbow at your side."),
        Reason.TRUNK_LEAN: tr("Stay upright."),
        Reason.TRUNK_TURNED: tr("Keep your chest still."),
        Reason.OUT_OF_PLANE: tr("Keep the arm in line."),
        Reason.SHRUG: tr("Keep the shoulder low."),
        Reason.OTHER_ARM_RAISED: tr("Rest the other arm."),
    }.get(reason, "")


def correction_next_time(reason: Reason) -> str:
    """Return what to do about a fault once the movement is over; or nothing."""
    advice = correction(reason)
    if not advice:
        return ""
    return tr("Next time: {advice}").format(advice=advice[:1].lower() + advice[1:])


def not_still_sentence() -> str:
    """Return the answer to somebody who wants a position measured while the arm moves."""
    return tr("The arm is not still yet. Hold the position for a second, then press H again.")


def trouble_sentence(trouble: SourceFault) -> str:
    """Return what happened and what the person can do."""
    return {
        SourceFault.CAMERA_DENIED: tr(
            "Thawline may not use the camera. Allow it in the privacy settings."
        ),
        SourceFault.CAMERA_BUSY: tr("Another program is using the camera. Close that program."),
        SourceFault.CAMERA_MISSING: tr(
            "This camera is not connected. Plug it in or choose another."
        ),
        SourceFault.CAMERA_UNPLUGGED: tr("The camera was unplugged. Plug it in again."),
        SourceFault.CAMERA_BLACK: tr("The picture is black. Open the camera's cover or add light."),
        SourceFault.CAMERA_SLOW: tr("The camera is slow. Add light, or unplug other cameras."),
        SourceFault.CAMERA_STUCK: tr(
            "The camera image has frozen. Unplug the camera and plug it in again."
        ),
        SourceFault.CLIP_UNREADABLE: tr("This clip cannot be played. Choose another."),
        SourceFault.CLIP_ENDED: tr("The clip has ended."),
        SourceFault.MODEL_MISSING: tr("Body tracking is missing. Download it under Settings."),
        SourceFault.POSE_RESTARTING: tr("One moment: body tracking is starting again."),
        SourceFault.POSE_FAILED: tr(
            "Body tracking could not start. Close the window and try again."
        ),
        SourceFault.OTHER: tr("Something went wrong. Try again."),
    }[trouble]


def trouble_name(trouble: SourceFault) -> str:
    """Return what happened alone, for where the steps against it stand beside it."""
    name, stop, rest = trouble_sentence(trouble).partition(". ")
    return f"{name}." if stop and rest else name


def trouble_steps(trouble: SourceFault) -> tuple[str, ...]:
    """Return what to look at, one after the other, before trying again."""
    return {
        SourceFault.CAMERA_DENIED: (
            tr("Open the privacy settings of this computer."),
            tr("Go to Camera, and allow it for Thawline."),
        ),
        SourceFault.CAMERA_BUSY: (
            tr("Close video calls and other camera programs."),
            tr("If none is open, unplug the camera, then plug it in."),
        ),
        SourceFault.CAMERA_MISSING: (
            tr("Check the plug at the camera and at the computer."),
            tr("Or choose another camera under Set-up."),
        ),
        SourceFault.CAMERA_UNPLUGGED: (
            tr("Check the plug at the camera and at the computer."),
            tr("Wait until the camera's light comes on."),
        ),
        SourceFault.CAMERA_BLACK: (
            tr("Check whether something is covering the lens."),
            tr("Switch on a light."),
        ),
        SourceFault.CAMERA_SLOW: (
            tr("Switch on a light: in the dark a camera takes fewer pictures."),
            tr("Unplug other cameras."),
        ),
        SourceFault.CAMERA_STUCK: (
            tr("Unplug the camera."),
            tr("Wait a moment, then plug it in again."),
        ),
        SourceFault.CLIP_UNREADABLE: (),
        SourceFault.CLIP_ENDED: (),
        SourceFault.MODEL_MISSING: (
            tr("Open Settings from the menu."),
            tr("Choose Body tracking and download it."),
        ),
        SourceFault.POSE_RESTARTING: (tr("Wait a few seconds."),),
        SourceFault.POSE_FAILED: (
            tr("Close other large programs."),
            tr("Close this window and start Thawline again."),
        ),
        SourceFault.OTHER: (
            tr("Unplug the camera and plug it in again."),
            tr("If that does not help, start Thawline again."),
        ),
    }[trouble]


def without_reading(outcome: TaskResult) -> str:
    """Return that a movement gave no reading, and why."""
    task, measurement = outcome.task, outcome.measurement
    reasons = measurement.refused_for[:1] if measurement is not None else ()
    why = reason_phrase(reasons[0]) if reasons else tr("it ended before anything was captured")
    return tr("{task}: no reading, {why}.").format(
        task=task_title(task.movement, task.side), why=why
    )


def pain_without_reading(outcome: TaskResult, pain: int) -> str:
    """Return the pain, 0..10, that a movement without a reading was rated with, as a note."""
    name = task_title(outcome.task.movement, outcome.task.side)
    return tr("{task}: pain {pain} of 10, no reading.").format(task=name, pain=pain)


def next_sentence(guide: SessionPlan) -> str:
    """Return what comes after this movement."""
    upcoming = guide.upcoming
    if guide.step is not SessionStep.NEXT or upcoming is None:
        return tr("That is all. Thank you.")
    return start_position_sentence(upcoming.movement, upcoming.side)
