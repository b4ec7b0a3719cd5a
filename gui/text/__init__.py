"""Words, sentences and languages of the window.

Public names:

    chart_wording: flag_word, places, tick_words, weekday_name
    day_text: day_from_text, day_text
    exercise_wording: beside_words, compared_name, count_unit, day_words, done_whole, done_words,
        how_in_short, how_sentence, in_part_words, limit_in_short, limit_passed_sentence,
        limit_sentence, log_words, moving_sentences, plan_sentences, planned_title,
        repetition_words, round_length_words, round_sentence, round_task_title
    finding_keywords: finding_keywords
    language: LANGUAGES, SYSTEM, install_language, language_for, language_in_force, language_shown,
        mark_as_english
    progress_wording: logged_words, progress_notes, progress_of_sides, rate_line, verdict_line,
        warm_up_words
    result_wording: by_hand_words, difference_words, last_time_words, line_of_results,
        result_notes, short_reason, value_and_range
    safety_wording: ScreeningText, answer_text, screening_text
    session_wording: change_of_arm, correction, correction_next_time, expected_sentences,
        hint_sentence, kind_words, live_sentence, next_sentence, not_still_sentence,
        pain_without_reading, position_seen_from_screen, reason_phrase, start_position_sentence,
        trouble_name, trouble_sentence, trouble_steps, without_reading
    wording: advice_words, affected_name, age_name, basis_sentence, conduct_sentence, error_text,
        event_mark, event_name, exercise_name, finding_words, help_name, listed_name,
        measurement_words, message_text, movement_introduced, movement_name, movement_plainly,
        notes_words, notice, onset_name, pain_sentence, person_name, posture_name, range_words,
        reason_sentence, reason_sentences, short_movement_name, short_notice, side_name,
        side_title, stopped_by_name, task_title, timing_name, tr, trial_words, value_words,
        view_name
"""
