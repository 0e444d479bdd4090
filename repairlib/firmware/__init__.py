"""Memory chips that hold firmware: which one it is, what is in it, and what must not be lost."""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    address_form="is_group is_local",
    any_file="read_any_image",
    blocks="BLOCK_KINDS Block BlockMap block_map",
    bodies="Standing chip_body chip_on_pads feet_on_pads",
    bytes_as_typed="in_hex typed_bytes",
    capacity="read_size",
    chip_voltage="Says before_connecting supply_of_identity supply_of_mark supply_of_net",
    chips_seen="Seen read_seen",
    damage="Checked check_image",
    damage_kinds="Damage KINDS address",
    differing_blocks="Differing differing",
    identity="Identity Maker capacity_in_words flash_identity identity_of",
    image_file="Image Sums image_of read_image save_new sums",
    in_circuit="reading_on_board",
    keep="HOW_SURE KEEP_KINDS Keep",
    lifting="lift_chip",
    outlines="OUTLINES Outline PADS Pads bodies_of",
    pins="DOES PINS pins_of",
    read_back="ReadBack check_read_back",
    read_patterns="PATTERNS",
    records="Records Segment read_records records_of",
    sectors="EQUAL ERASE PROGRAM SECTOR Sectors read_erase sectors_that_differ",
    sfdp="Basic Erase FastRead Header Sfdp read_sfdp",
    sfdp_calculators=(
        "LARGEST_DUMP sfdp_density sfdp_dump sfdp_erase_types sfdp_first_dword sfdp_found "
        "sfdp_header sfdp_parameter_header"
    ),
    stored_sums="sums_in_doubt",
    two_reads="Reads compare_reads",
    what_to_keep="keep_into keep_list",
    which_chip="HAZARDS_OF_MEASURING Ranked rank_chips which_first",
    write_files="StoredFile",
    write_kept="events_text may_take_back take_back write_again",
    write_plan="CHIP_IS_BLANK DONE ERASED GO INTENDED KEEP_LIST KEPT LEFT READ READ_BACK SUPPLY "
    "WRITE_STEPS WRITTEN WriteEvent WriteState begin_write write_step",
)
