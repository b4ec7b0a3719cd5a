"""How to read the report: what its numbers mean, and what they do not."""

NOTICE = "An estimate made with a camera, not a diagnosis and not a medical device."
DEMO = "DEMO DATA: this person and all these readings are made up."

CAVEATS = (
    "Angles are active motion of the arm against the trunk as one camera sees it. They are not "
    "the passive range of the joint, and they cannot replace a goniometer's readings.",
    "A reading is the median of a session's trials. Its interval, in brackets, is about what the "
    "person could do that day and is meant to contain the true value in 19 of 20 readings. For "
    "flexion and abduction this was checked against angles marked in photographs of real people; "
    "for the other movements on virtual people only. Most of the width is the same for every "
    "reading of one person with one set-up, so changes are more certain than single values: "
    "their interval counts only the scatter from day to day.",
    "First and last readings are medians of up to five days, without the two practice sessions "
    "of each set-up. Their change covers the whole time, and its interval applies to that change "
    "alone (pointwise). From four weeks and eight days with readings on, a verdict is sought "
    "every week, with a line through at most 16 weeks that unusual days hardly affect. Because "
    "the readings are checked so often, a verdict needs more evidence than a 95 % interval. So "
    "“no clear change” may appear beside an interval without 0, and “probably” may still be "
    "chance. In simulations, a few people in 100 with no real change were shown one within "
    "twelve weeks. The line starts again after a turn, and where the way of measuring changed or "
    "something happened to the shoulder. Secondary movements need more evidence. Three weeks "
    "after the last reading, a verdict no longer applies.",
    "Other side: the last days of both; the deficit is how far this side falls short. Its "
    "interval combines those of both sides' readings.",
    "“Levelled off” means that a gain of 5° a month is unlikely while this side still moves less "
    "than the other. It is missed more often than it is wrong.",
    "Before and after an event: two lines and a step, drawn towards a weak assumption (slopes of "
    "+2 ± 6° a month, step 0 ± 10°) until there are enough days. The changes at the top compare "
    "medians of the last days with those up to the day named there, so the two differ a little.",
    "Behind the back, levels of the spine are shown. Changes are given in levels and centimetres, "
    "both approximate: they assume a back of usual length.",
    "The limits for trends, everyday tasks and prompts are Thawline's own. No physiotherapist "
    "has confirmed them yet.",
)
