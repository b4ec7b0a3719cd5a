"""How to read the report: what its numbers mean, and what they do not."""

NOTICE = "An estimate made with a camera, not a diagnosis and not a medical device."
DEMO = "DEMO DATA: this person and all these readings are made up."

CAVEATS = (
    "Angles are active motion of the arm against the trunk as one camera sees it. They are "
    "not the passive range of the joint and not interchangeable with a goniometer's.",
    "A reading is the median of a session's trials, and its interval in brackets is of what the "
    "person could do that day. It is meant to hold the true value in 19 of 20 readings; in flexion "
    "and abduction that was tried on angles marked in photographs of real people, in the other "
    "movements on virtual people only. Most of its width is the same for every reading of one "
    "person with one set-up, so changes are known better than single values: their interval counts "
    "only the scatter from day to day.",
    "First and last readings are medians of up to five days, the two practice sessions of a set-up "
    "left out; their change covers the whole time, and its interval stands alone (pointwise). "
    "A verdict is looked for every week, from four weeks and eight days with readings on, by a "
    "line through at most 16 weeks that odd days hardly move. With so many looks it needs more "
    "evidence than a 95 % interval, so “no clear change” may stand beside an interval without 0; "
    "“probably” may still be chance. In twelve weeks without any change a few simulated people in "
    "100 were told of one. The line begins anew after a turn, and where the way of measuring "
    "changed or something happened to the shoulder. Movements also seen need more evidence. Three "
    "weeks after the last reading no verdict is today's.",
    "Other side: the last days of both; the deficit is how far this side falls short. Its interval "
    "joins those of both sides' readings.",
    "“Levelled off” means that a gain of 5° a month is unlikely while the side is still short of "
    "the other. It is missed more often than it is wrong.",
    "Before and after an event: two lines and a step, drawn towards a weak assumption (slopes of "
    "+2 ± 6° a month, step 0 ± 10°) until there are days enough.",
    "Behind the back, levels of the spine are shown. Changes are given in levels and centimetres, "
    "both approximate: they assume a back of usual length.",
    "Limits for trends, milestones and prompts are this program's own and await a "
    "physiotherapist's confirmation.",
)
