"""Change over weeks: series, trend line, weekly verdicts, comparison, home programme, prompts.

Public names:

    before_after: BeforeAfter, TreatmentEvent, change_since, latest_visit, treatment_events
    clinician_prompts: MEASURE_AGAIN, PROMPT_WORDS, Prompt, PromptKind, TO_MEASURE_AGAIN,
        WORTH_SHOWING, finding_text, prompt_text
    comparison: Block, Change
    current_verdict: Turn
    dates: MONTHS, date_words, short_date_words
    detectable_gain: POWER, TimeToKnow
    home_programme: AssessmentDose, BOTH_SIDES, DONE_WORDS, HELD, HIGH_PAIN, Irritability,
        ProgrammeDone, REPETITIONS, TIMES_A_DAY, USUAL_PAIN_LIMIT, WeekDone, assessment_dose,
        dose_words, eased_on, events_with_plans, irritability, irritability_on, pain_limit,
        pain_to_rest_from, pain_while_moving, plan_on, programme_done_sentences, weeks_done
    measuring_plan: MeasuringPlan, measuring_plan
    milestones: AT_LEVEL, LEAST_DAYS, TASKS
    movement_ends: MonthEnds
    overview: Progress, history_until, progress_of
    phases: SeriesPhase
    sentences: A_MONTH, NO_ADVICE, OTHER_CAUSES, TEMPLATES, also_seen, change_sentence,
        counted_from, doubt_sentence, effect_sentence, effect_words, no_longer_clear,
        plain_verdict_words, setup_sentence, shared_sentences, short_name, shown_change,
        side_sentences, slope_sentence, told_since, uncompared_slope, unproven, verdict_words,
        visit_sentence, when_known_sentence
    series: INSTRUMENT_CHANGED, Series, event_breaks, instrument_of, instrument_signature,
        series_by_timing
    shoulder: SideProgress
    side_deficit: PATTERN_MOVEMENTS, Pattern, Share, SideDeficit
    side_wording: END_WORDS, SIDES_CAUTION, SIDE_TEMPLATES, SMALLEST, amount_words,
        deficit_sentence, dominance_sentence, end_times_words, ends_sentence, months_sentence,
        pattern_sentence, share_words, side_by_side_sentences
    stall: STALL_BELOW_DEG
    warm_up: WarmUpEffect, warm_up_effects
    week_sentence: TEMPLATES, counted_sentence, forecast_sentence, joined, other_sentence,
        so_far_sentence, week_sentence
    weekly_verdicts: LEAST_DAYS, LEAST_WEEKS, Verdict, WINDOW_DAY
    wording: DECIMALS, HELP_WORDS, INTERVAL, IN_LEVELS, Translate, UNASKED_NAME, VERDICT_WORDS,
        WITH_INTERVAL, block_words, change_words, conduct_words, english, name_words, number_words,
        signed, slope_words, with_decimal_sign, with_interval
"""
