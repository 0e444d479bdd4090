"""Planning a recap: a parts list as typed, which capacitors age, what to fit instead."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    belonging="ANOTHER_LIST CHANGED_LINES places_of readings_of unchanged",
    board="Board Position",
    board_file="board_csv read_board read_board_text write_board",
    board_map="EMPTY SIDES USUAL_WIDTH board_of_map map_of_board plus_not_known",
    board_side="COMPONENT OPPOSITE SOLDER spoken turned_over",
    calculators="replacement_capacitor",
    catalogue="Catalogue parse_catalogue read_catalogue",
    choice="CHOICE_RULE SPARES_RULE spares_for",
    expectation="LIFE_RULE",
    export="AlreadyThere Saved csv_text free_stem write_whole",
    fitting_order="NOT_YOURS ORDER_RULE Step",
    item="Item",
    makeshifts="back_to_back",
    measurements="CANNOT_TELL LIMITS_RULE MAY_STAY MUST_GO",
    order="MOST_BOARDS ORDER_COLUMNS Order",
    order_line="OrderLine",
    other_parts="OTHER_KINDS OtherPart",
    parts="read_parts",
    planner="Plan plan plan_file",
    replacing="InPlace in_place_of",
    route="SUPPLY_DONE Stop here_on route_of",
    rules="HOLD RULES",
    several="SeveralPlans check_each_once one_for_each plan_boards",
    substitution="substitute_capacitor",
)
