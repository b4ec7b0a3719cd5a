"""The report as HTML: what it says, what it escapes, what it never loads."""

import datetime as dt
import re
from dataclasses import replace

import pytest

from measure.demo.story import story_histories
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.goal_records import Goal, GoalRating
from measure.domain.home_programme_records import Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind, History, LimitingFactor, Pain
from measure.domain.session_facts import ClinicianMethod, ClinicianValue
from measure.progress.sentences import OTHER_CAUSES
from measure.progress.wording import MINUS
from measure.report.caveats import CAVEATS, DEMO, NOTICE
from measure.report.choices import ReportChoices
from measure.report.page import report_foot, report_html, report_title
from tests.support.progress_histories import MADE, day, history
from tests.support.record_samples import event, moment, person, some_id
from tests.support.report_text import Page

LEFT, RIGHT = (Movement.FLEXION, Side.LEFT), (Movement.FLEXION, Side.RIGHT)
NOW = moment("2026-11-25T09:00:00+00:00", 60)
DETAILED = ReportChoices(details=True)
TWELVE = [(7 * week, 90.0 + week) for week in range(12)]


@pytest.fixture(scope="module")
def story() -> dict[str, str]:
    """The garden members' reports by name."""
    return {
        record.person.pseudonym: report_html(record, NOW.day, DETAILED)
        for record in story_histories(NOW)
    }


def text_of(records: History, today: int = 90) -> str:
    return Page(report_html(records, day(today), DETAILED)).text


def test_it_says_who_what_how_and_what_it_is_not(story: dict[str, str]) -> None:
    text = Page(story["demo-Marigold"]).text
    for words in (
        "demo-Marigold , left side affected, right-handed, since 2026-02, began gradually.",
        "Made on 25 Nov 2026 from 50 sessions, 8 Jul 2026 to 22 Nov 2026.",
        NOTICE,
        "Flexion left, affected",
        "Flexion right",
        "increasing",
        "Pain in the last two weeks",
        "Home programme since 8 Jul 2026: Table slide forwards, 10 repetitions, "
        "held for 15 s, 2 times a day, left; ",
        "Reach a shelf at shoulder height Flexion from 90° yes yes",
        "measurements gave no reading",
        "Flexion seen from the side",
        "Model: demo",
        *CAVEATS,
    ):
        assert words in text, words


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("demo-Marigold", "increasing"),
        ("demo-Bramble", "levelled off"),
        ("demo-Thistle", "injection"),
        ("demo-Clover", "too early to say"),
    ],
)
def test_demo_data_say_so_first_and_last(story: dict[str, str], name: str, words: str) -> None:
    text = Page(story[name]).text
    assert words in text
    assert text.count(DEMO) == 2
    assert "(demo data)" in text
    assert text.endswith(DEMO)


def test_it_says_from_when_on_a_trend_counts(story: dict[str, str]) -> None:
    after = "Trends of the left side are counted from 17 Sep 2026 (injection)."
    assert after in Page(story["demo-Thistle"]).text
    assert "are counted from" not in Page(story["demo-Marigold"]).text
    early = "A trend needs at least 4 weeks and 8 days with readings."
    assert early in Page(story["demo-Clover"]).text
    assert early not in Page(story["demo-Marigold"]).text


def test_real_people_are_no_demo() -> None:
    assert "demo" not in text_of(history({LEFT: TWELVE})).lower()


def test_a_value_stands_with_its_interval_on_both_days() -> None:
    text = text_of(history({LEFT: TWELVE}))
    # Medians of three sessions after those of practice, and of the last ones, 8 degrees either way.
    assert "93° (85 to 101) 3 days to 4 May 2026" in text
    assert "100° (92 to 108) 3 days to 22 Jun 2026" in text


def test_levels_behind_the_back_are_bands_not_angles() -> None:
    values = [(number, value / 100) for number, value in TWELVE]
    page = Page(report_html(history({(Movement.HAND_BEHIND_BACK, Side.LEFT): values}), day(90)))
    assert "hand behind back" in page.text.lower()
    row = page.text.split("Hand behind back left, affected")[1].split("Drawings:")[0]
    assert re.search(r"T\d to T\d", row)
    assert "°" not in row


def test_a_refused_movement_is_an_empty_frame_with_its_reason() -> None:
    records = history({LEFT: TWELVE, (Movement.EXTENSION, Side.LEFT): [(0, None), (7, None)]})
    page = Page(report_html(records, day(90), DETAILED))
    assert "Extension left, affected not measured 13 Apr 2026 Your body leaned" in page.text
    assert ("rect", "stroke-dasharray", "2 1.5") in page.attributes
    assert "2 of 14 measurements gave no reading" in page.text


def test_a_later_refusal_stands_beside_the_latest_reading() -> None:
    text = text_of(history({LEFT: [*TWELVE, (84, None)]}))
    assert "22 Jun 2026; not measured 29 Jun 2026" in text


def test_nothing_measured_yet_is_a_report_too() -> None:
    text = text_of(history({}))
    assert "Nothing measured yet" in text
    assert NOTICE in text


def test_prompts_come_first() -> None:
    falling = [(number, 140 - 0.3 * number) for number in range(0, 84, 2)]
    text = text_of(history({LEFT: falling}))
    assert text.index("Flexion, left: decreasing.") < text.index("First and last readings")
    assert "readings went down" in text


def test_breaks_events_and_pain_are_told() -> None:
    injected = event(
        person(), kind=EventKind.INJECTION, day=day(40), side=Side.LEFT, note="Left <b>arm</b>."
    )
    rated = {number: Pain(rest=1, night=3, worst_24h=5) for number in (70, 77, 84)}
    text = text_of(history({LEFT: TWELVE}, events=[injected], pain=rated))
    assert "16 May 2026: injection, left side: Left <b>arm</b>." in text
    assert "worst in 24 hours 5 (5 to 5); at night 3 (3 to 3)" in text


def test_what_was_lost_before_an_injection_is_told(story: dict[str, str]) -> None:
    text = Page(story["demo-Thistle"]).text
    match = re.search(r"Before “injection”, left side, 8 Jul 2026 to 16 Sep 2026: ([^;]*);", text)
    assert match
    assert match[1] == "Flexion decreasing"
    # The slopes before and after stand with the event, and what they do not show.
    row = text.split("Per month after Injection, 16 Sep 2026 Flexion, left ")[1].split(
        " Extension"
    )[0]
    since, at_once, before, after = re.findall(rf"([+{MINUS}]\d+)° \(", row)
    assert int(since) > 30
    assert (at_once[0], before[0], after[0]) == ("+", MINUS, "+")
    assert OTHER_CAUSES in text
    assert "Before “" not in Page(story["demo-Marigold"]).text


def test_pain_during_movement_and_what_ended_it() -> None:
    records = history({LEFT: [(0, 90.0), (60, 91.0), (70, 92.0), (84, None)], RIGHT: [(84, 160.0)]})
    answers = {
        0: (9, LimitingFactor.WEAKNESS),
        60: (4, LimitingFactor.PAIN),
        70: (2, LimitingFactor.STIFFNESS),
        84: (3, LimitingFactor.STIFFNESS),
    }
    asked = tuple(
        replace(record, pain_during=answers[number][0], stopped_by=answers[number][1])
        if record.measurement.side is Side.LEFT
        else replace(record, pain_during=0)
        for record in records.measurements
        for number in [(record.taken.day - day(0)).days]
    )
    text = text_of(replace(records, measurements=asked), 86)
    assert (
        "During movement in the last four weeks, affected side. Flexion: pain 3 (2 to 4), stopped "
        "by stiffness 2 times, stopped by pain once." in text
    )
    assert "stopped by weakness" not in text
    assert "Apr 2026 weakness 1 of 1" in text


def test_the_box_names_other_movements_that_lack_more_than_the_main_ones() -> None:
    short = (Movement.EXTENSION, Side.LEFT), (Movement.EXTENSION, Side.RIGHT)
    records = history(
        {LEFT: [(0, 150.0)], RIGHT: [(0, 152.0)], short[0]: [(0, 27.0)], short[1]: [(0, 51.0)]},
        who=person(affected=(Side.LEFT,)),
    )
    box = Page(report_html(records, day(0))).text.split("First and last readings")[0]
    assert re.search(r"Flexion 150° .*, 99 % .* Extension 27° .*, 53 % ", box)
    alike = history(
        {LEFT: [(0, 150.0)], RIGHT: [(0, 152.0)], short[0]: [(0, 50.0)], short[1]: [(0, 51.0)]},
        who=person(affected=(Side.LEFT,)),
    )
    box = Page(report_html(alike, day(0))).text.split("First and last readings")[0]
    assert "Extension" not in box.split("Since the first")[0]


def test_few_days_show_no_everyday_task_either_way() -> None:
    text = text_of(history({LEFT: [(0, 170.0), (7, 170.0)], RIGHT: TWELVE}))
    assert "Reach a shelf at shoulder height Flexion from 90° few days yes" in text
    assert "Reach a shelf above the head Flexion from 120° few days not shown" in text


def test_a_plan_and_what_was_done_of_it() -> None:
    who = person()
    plan = Plan(
        id=some_id("plan"),
        person_id=who.id,
        first_day=day(0),
        exercises=(
            PlannedExercise(
                exercise=Exercise(listed=ListedExercise.PENDULUM), times_a_day=2, hold_s=0
            ),
        ),
        pain_limit=4,
        chosen_by="<i>somebody</i>",
        review=day(120),
    )
    text = text_of(replace(history({LEFT: TWELVE}), plans=(plan,)))
    assert "Pendulum, 2 times a day; stop at pain 4 of 10. Chosen by: <i>somebody</i>." in text
    assert "Next review: 4 Aug 2026." in text


def test_a_plan_that_prescribes_otherwise_is_an_event_and_one_to_come_is_none() -> None:
    plans = [
        Plan(
            id=some_id(f"plan {number}"),
            person_id=person().id,
            first_day=day(number),
            exercises=(),
            pain_limit=limit,
        )
        for number, limit in ((0, 3), (40, 4), (120, 5))
    ]
    text = text_of(replace(history({LEFT: TWELVE}), plans=tuple(plans)))
    assert "16 May 2026: home programme changed" in text
    # In the box, in the curves of flexion and of pain, and in the list of events.
    assert text.count("home programme changed") == 4
    assert "Since the latest event, 16 May 2026 (home programme changed)" in text


def test_what_lies_after_the_day_is_left_out() -> None:
    late = event(person(), kind=EventKind.FLARE, day=day(80), note="later")
    text = text_of(history({LEFT: TWELVE}, events=[late]), 60)
    assert "later" not in text
    assert "from 9 sessions, 6 Apr 2026 to 1 Jun 2026" in text


@pytest.mark.parametrize(
    "name",
    [
        "<script>alert(1)</script>",
        '"><img src=x onerror=alert(1)>',
        "</title><h1>x",
        "&amp;lt;",
        "Łukasz 120° Ω Ж",
        "' or 1=1 --",
    ],
)
def test_hostile_names_are_only_text(name: str) -> None:
    page = Page(report_html(history({LEFT: TWELVE}, who=person(name)), day(90)))
    assert name in page.text
    assert not {"script", "img"} & set(page.tags)
    assert page.tags.count("h1") == 1
    assert page.tags.count("title") == 1


def test_the_page_is_whole_in_itself(story: dict[str, str]) -> None:
    for content in story.values():
        page = Page(content)
        outside = {"src", "href", "data", "srcset", "action", "poster"}
        assert not [attribute for attribute in page.attributes if attribute[1] in outside]
        assert not {"script", "link", "iframe", "object"} & set(page.tags)
        assert "url(" not in content
        assert "@import" not in content
        addresses = set(re.findall(r"https?://[^\"' <]+", content))
        # The name of a language, which no browser fetches.
        assert addresses == {"http://www.w3.org/2000/svg"}
        policy = [
            value for tag, name, value in page.attributes if (tag, name) == ("meta", "content")
        ]
        assert policy[0].startswith("default-src 'none'")


def test_only_black_white_and_grey(story: dict[str, str]) -> None:
    colours = set(re.findall(r"#([0-9a-f]{3}|[0-9a-f]{6})\b", story["demo-Thistle"]))
    assert colours
    for colour in colours:
        parts = {colour[k : k + len(colour) // 3] for k in range(0, len(colour), len(colour) // 3)}
        assert len(parts) == 1, colour


def test_the_words_do_not_urge(story: dict[str, str]) -> None:
    for content in story.values():
        words = set(re.findall(r"[a-z]+", Page(content).text.lower()))
        assert not words & {"goal", "target", "well", "great", "keep", "push", "streak", "score"}


def test_the_same_history_gives_the_same_report() -> None:
    records = history({LEFT: TWELVE, RIGHT: TWELVE})
    assert report_html(records, day(90)) == report_html(records, day(90))


def test_title_and_foot() -> None:
    assert report_title(person("Rosa")) == "Shoulder motion: Rosa"
    assert report_title(person("Rosa", demo=True)) == "Shoulder motion: Rosa (demo data)"
    assert report_foot(person("Rosa"), dt.date(2026, 11, 25)) == (
        f"Shoulder motion: Rosa, 25 Nov 2026. {NOTICE}"
    )


def test_a_lasting_change_of_the_set_up_is_told() -> None:
    stood = "trunk_px={} shoulders=0.05 lean_deg=0.0 frames=20 size=640x480"
    made = {
        number: replace(MADE, source={"standing": stood.format(200 if number < 8 else 260)})
        for number in range(16)
    }
    records = history({LEFT: [(number, 90.0) for number in made]}, made=made)
    assert "Flexion, left: The person now stands 30 % nearer" in text_of(records, 16)
    assert "now stands" not in text_of(history({LEFT: TWELVE}))


def test_the_box_says_since_when_what_changed_and_what_is_asked() -> None:
    values = {
        LEFT: [(number, 90.0 + number / 3) for number in range(0, 84, 3)],
        RIGHT: [(number, 160.0) for number in range(0, 84, 7)],
    }
    visit = event(person(), kind=EventKind.CLINIC_VISIT, day=day(40), side=None)
    rated = {k: Pain(worst_24h=8 if k < 40 else 3) for k in range(0, 84, 3)}
    records = history(values, events=[visit], pain=rated, who=person(affected=(Side.LEFT,)))
    choices = ReportChoices(question="May I dig <again>?")
    page = Page(report_html(records, day(84), choices))
    box = page.text.split("not a medical device.")[1].split("First and last readings")[0]
    sentence = " Left shoulder: more movement than before."
    assert re.match(
        rf"{sentence} Last days, share of the other side Flexion 11\d° \(.*?\), 72 % \(.*?\) "
        r"Since the clinic visit on 16 May 2026 Flexion \+14° \(",
        box,
    )
    assert "Worst pain in 24 hours about 3 of 10, before it was 8." in box
    assert "No exercises were logged." in box
    assert "Points to check Thawline found none." in box
    assert "The person asks “May I dig <again>?”" in box


def test_after_a_first_visit_the_change_counts_from_the_first_days_that_do() -> None:
    """What was measured at the visit is practice; the box says from when on it can tell."""
    days = (0, 2, *range(7, 36, 2))
    values = {LEFT: [(number, 90.0 + 0.5 * number) for number in days]}
    visit = event(person(), kind=EventKind.CLINIC_VISIT, day=day(0), side=None)
    records = history(values, events=[visit], who=person(affected=(Side.LEFT,)))
    box = Page(report_html(records, day(36))).text.split("First and last readings")[0]
    assert re.search(
        r"Since the clinic visit on 6 Apr 2026 Flexion \+1\d° \(.*\) since 13 Apr 2026, ", box
    )


def test_what_cannot_be_compared_stands_last_in_one_line() -> None:
    treated = event(person(), kind=EventKind.INJECTION, day=day(90), side=Side.LEFT)
    rarely = [*range(0, 88, 3), 95]
    values = {
        LEFT: [(number, 90.0) for number in rarely],
        (Movement.EXTERNAL_ROTATION, Side.LEFT): [(number, 40.0) for number in range(0, 120, 3)],
        (Movement.HAND_BEHIND_BACK, Side.LEFT): [(number, 0.4) for number in rarely],
    }
    records = history(values, events=[treated], who=person(affected=(Side.LEFT,)))
    box = Page(report_html(records, day(118))).text.split("First and last readings")[0]
    assert re.search(
        r"\(injection\) External rotation .*? Flexion and hand behind back: not comparable, "
        r"too few sessions since",
        box,
    )


def test_the_day_since_when_can_be_chosen() -> None:
    injected = event(person(), kind=EventKind.INJECTION, day=day(40), side=Side.LEFT)
    records = history({LEFT: TWELVE}, events=[injected])
    assert (
        "Since the latest event, 16 May 2026 (injection)"
        in Page(report_html(records, day(84))).text
    )
    chosen = ReportChoices(since=day(30))
    assert "Since 6 May 2026 Flexion" in Page(report_html(records, day(84), chosen)).text
    plain = history({LEFT: TWELVE})
    assert "Since the first sessions Flexion +7°" in Page(report_html(plain, day(84))).text


def test_exercises_are_counted_by_days_and_never_as_a_share(story: dict[str, str]) -> None:
    text = Page(story["demo-Bramble"]).text
    assert re.search(r"Exercises were logged on \d+ days\.", text)
    assert "were done" not in text
    # The further pages count each exercise, for who wants to know.
    done = text.index("Exercises since ")
    assert done > text.index("Home programme since ")
    said = text[done : done + 300]
    assert re.search(r" \d+ of \d+ planned \(\d+ logged without repetitions\)", said)
    assert "%" not in said


def test_the_report_says_how_the_dominant_arm_differs(story: dict[str, str]) -> None:
    assert "The right hand is the dominant one." in Page(story["demo-Marigold"]).text


def test_the_further_pages_come_on_request() -> None:
    records = history({LEFT: TWELVE})
    assert "How to read this" not in Page(report_html(records, day(84))).text
    assert "How to read this" in text_of(records)


@pytest.mark.parametrize("landscape", [False, True])
def test_no_text_is_smaller_than_eight_points(landscape: bool) -> None:
    html = report_html(history({LEFT: TWELVE}), day(84), ReportChoices(landscape=landscape))
    sizes = re.findall(r"font-size: ([\d.]+)pt", html) + re.findall(r'font-size="([\d.]+)"', html)
    assert len(sizes) > 10
    assert min(map(float, sizes)) >= 8


def test_what_looks_like_a_contradiction_has_its_reason_beside_it(story: dict[str, str]) -> None:
    """Levelled off beside a gain over the whole time; gaining beside no change over it."""
    bramble = Page(story["demo-Bramble"]).text.split("Extension right, affected")[0]
    assert "levelled off" in bramble
    assert "gained earlier; lately less than 5° a month" in bramble
    thistle = Page(story["demo-Thistle"]).text.split("Hand behind back left, affected")[0]
    assert "counted since 17 Sep 2026" in thistle


def test_goals_and_values_taken_by_hand_are_told() -> None:
    who = person()
    goal = Goal(id=some_id("goal"), person_id=who.id, words="put on a <coat>", first_day=day(0))
    ratings = tuple(
        GoalRating(
            id=some_id(f"rating {number}"),
            person_id=who.id,
            goal_id=goal.id,
            day=day(number),
            rating=rating,
        )
        for number, rating in ((0, 2), (30, 3), (60, 5))
    )
    records = history({LEFT: TWELVE})
    value = ClinicianValue(
        movement=Movement.FLEXION, side=Side.LEFT, method=ClinicianMethod.PASSIVE, value_deg=104.0
    )
    last = replace(records.sessions[-1], clinician_values=(value,))
    records = replace(
        records,
        sessions=(*records.sessions[:-1], last),
        goals=(goal,),
        goal_ratings=ratings,
    )
    text = text_of(records)
    assert (
        "Wants to do again: “put on a <coat>”, 2 of 10 on 6 Apr 2026, 5 of 10 on 5 Jun 2026."
        in text
    )
    assert "Measured by hand on 22 Jun 2026: Flexion, left: passive 104°." in text
