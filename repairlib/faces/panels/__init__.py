"""The live panels of the lessons: thin widgets over the calculators, with no rule of the trade."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    before_power="before_power_panel",
    calculators="calculator_panel",
    discharge="discharge_view",
    esd_audit="bench_audit",
    exercise_form="answer_form",
    exercise_page="question_page",
    framed="page_view",
    first_power="first_power_up",
    hot_air="hot_air_tuner",
    job_card="job_cards",
    joint_heat="joint_heat_panel",
    learner="learner_form",
    life="life_view",
    limiting="power_limit",
    look="Panel told words",
    marking_reader="quick_check",
    measuring="judging on_the_board",
    own_board="board_map",
    part_verdict="judge_part",
    polarity="polarity_check",
    power_path="power_path_panel",
    progress="progress_view",
    recap_plan="plan_view",
    shelf="shelf_view",
    simulated_supply="supply_faults",
    warming_up="practice",
    word_list="words_view",
)
