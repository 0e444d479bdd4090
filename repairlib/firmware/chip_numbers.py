"""Numbers of the trade on chips, whoever makes them, and what a chip with such a number is.

Those of memories for programs in the trade's series are read by `markings.memory_chips`. From
memory.
"""

from repairlib.firmware.chip_signs import Row, row_of

NO_MEMORY = "its number is that of processors, which fetch their program from outside"
_END = r"[a-z]{0,5}"
MARKS = (
    row_of(
        r"z80\w*|z8[04]\w*|[a-z]{0,2}80c?3[1259]\w*|[a-z]{0,3}(?:8080|8085|8088|80c?[1-4]?8[68])\w*|"
        r"[a-z]{0,2}(?:6[58]c?02|65c?816|63[abc]?0[39]|68[abc]?0[0-9]|680[0-6]0|68[ch]c000)\w*",
        NO_MEMORY,
        processor=14,
    ),
    row_of(
        r"[a-z]{0,2}80(?:4[0-9]|c?5[0-9])\w*|[a-z]{0,3}(?:8[379]c?[es]?5[0-9]|87c?4[0-9])\w*|"
        r"[a-z]{0,2}89[clsv]+\d+\w*|z86\w+|[a-z]{0,2}68hc\d\w*|at(?:tiny|mega|xmega)\w*|at90\w+|"
        r"(?:ds)?pic\d\w+|stm(?:8|32)\w*|[ga]d32\w+|lpc\d\w+|msp43\w+|esp(?:32|8266)\w*|rp20\d+|"
        r"n?rf5\d\w+|cc[12]\d{3}\w*|r[57]f\w+|upd78\w+|d78f?\d+\w*|m3[078]\d+\w*|h8[s/]\w*|hd64\w+|"
        r"mb9\d\w+|stc\d\w+|n76e\w+|efm(?:8|32)\w+|c8051f\w+|mc9s\w+|mk[el]?\d{2}[dfz]\w+|"
        r"atsam\w+|adsp-?\w+|tms320\w+|it8\d{3}\w*|npce\w+|kb9\d\w+|mec\d\w+",
        "its number is that of processors, most of which hold their program inside",
        processor=14,
    ),
    row_of(
        r"[a-z]{0,3}82c?5[0-9]\w*|z84c?[2-4]\w*|[a-z]{0,2}65c?2[0-9]\w*|[a-z]{0,2}68[abc]?2[01]\w*|"
        r"6850\w*|6551\w*|16c?[45]50\w*|gal\d\w*|pal\d\w*|atf\d\w+|xc95\w+|epm[37]\w+|5m\d+z\w*",
        "its number is that of ports, timers and logic around a processor",
        logic=12,
    ),
    row_of(
        r"k9[a-z]\w*|tc58\w+|h27[a-z]\w*|hy27\w+|mt29f\w+|s34m\w+|29f\d+g08\w*|w29n\w+|nand\d+\w*",
        "its number is that of NAND",
        nand=12,
    ),
    row_of(
        r"thgb\w*|thgaf\w*|klm\w+|h26m\w+|sdin\w+|mtfc\w+|emmc\w*|kmk?\d\w+",
        "its number is that of managed flash",
        managed=12,
    ),
    row_of(
        rf"[a-z]{{0,5}}(?:358|324|2904|2902|4558|4560|4580|07[124]|08[124]|06[124]|"
        rf"553[24]|741|1458|833|"
        rf"2068|393|339|2903|311|6002|600[14]|27[24]|2272|8552|321|2604|604){_END}",
        "its number is that of op-amps or comparators",
        op_amp=12,
    ),
    row_of(
        rf"[a-z]{{0,5}}(?:7[89][lm]?(?:05|06|08|09|10|12|15|18|24|33)|317[lm]?|337|"
        rf"1117|1085|1086|1084|"
        rf"2940|2950|2951|34063|2575|2576|2594|2596|3842|3843|384[45]|431|494|5033|"
        rf"6206|2931){_END}",
        "its number is that of regulators",
        regulator=12,
    ),
    row_of(
        rf"[a-z]{{0,5}}(?:485|75176|3485|1487|232|3232|202|422|490|1050|2551|"
        rf"82c25[01]|2003|2803|490){_END}",
        "its number is that of line drivers",
        driver=12,
    ),
    row_of(
        rf"[a-z]{{0,4}}(?:1302|1307|1337|1338|1339|3231|3232rtc|8563|8523|85063|8025|"
        rf"8583|4543|12887){_END}",
        "its number is that of clock chips",
        clock=12,
    ),
    row_of(
        rf"[a-z]{{0,4}}(?:4435|4953|4946|4606|4800|4404|8205|9926|9435|9933|7413|"
        rf"3400|3401|2301|2302){_END}",
        "its number is that of MOSFETs",
        switch=12,
    ),
    row_of(
        r"74[a-z]{2,4}\dt(?:45|245)\w*|[a-z]{2,3}0?10[1248]\w*|txb\w+|txs\w+|lsf\w+|"
        r"[a-z]{0,3}9306\w*",
        "its number is that of level shifters",
        shifter=12,
    ),
    row_of(
        r"[57]4[a-z]{1,5}\d{1,4}[a-z]{0,4}|40\d\db\w*|[a-z]{0,3}555[a-z]*|[a-z]{0,3}7555[a-z]*",
        "its number is that of logic or timers",
        logic=12,
    ),
    row_of(
        r"[a-z]{0,3}(?:ecc|sha)\d+\w*|slb\d+\w*|[a-z]{0,3}a71\w+",
        "its number is that of security chips",
        secure=12,
    ),
    row_of(
        r"[\w-]*\d+mx?(?:4|8|16|32|64)(?:[a-z][\w-]*)?|[a-z]{0,4}(?:4164|41256|4464|"
        r"44256|41464|514256)"
        r"[\w-]*|[a-z]{0,4}(?:6116|6264|62256|628128|62128|622\d+)[\w-]*|[a-z]{0,2}\d*ddr\d\w*",
        "its number is that of working memories",
        ram=12,
    ),
    row_of(
        rf"[a-z]{{0,4}}(?:386|4871|4990|8002|2822|2030|7294|4863|8403){_END}",
        "its number is that of amplifiers for sound",
        sound=12,
    ),
)  # fmt: skip


def numbered(word: str) -> list[Row]:
    """The rows whose number a word is, with or without what a maker put behind a dash.

    >>> [row.sign.words for row in numbered("LM358-N")]
    ['its number is that of op-amps or comparators']
    """
    number = word.lower()
    shorter = number.partition("-")[0]
    return [row for row in MARKS if row.pattern.fullmatch(number) or row.pattern.fullmatch(shorter)]
