"""Signs by which a chip is known without its data sheet: what each speaks for, and how strongly.

A sign gives points to each thing that a chip may be. They are common practice of the bench: a body
5.3 mm wide with 8 leads is hardly anything but a serial flash (4), a coil beside it makes a chip a
switching regulator (6), a processor near by says a little (2). What is not named gets none.
"""

from __future__ import annotations

import re
from typing import NamedTuple

FLASH = "serial flash"
PARALLEL = "parallel memory for programs"
NAND = "NAND flash"
MANAGED = "flash with its own controller"
FIRMWARE = (FLASH, PARALLEL, NAND, MANAGED)
EEPROM = "EEPROM for settings"
CLOCK = "real-time clock"
REGULATOR = "regulator"
SWITCH = "MOSFET or transistor"
OP_AMP = "op-amp or comparator"
SHIFTER = "level shifter"
SECURE = "secure element"
RAM = "working memory"
PROCESSOR = "processor"
DRIVER = "line driver"
LOGIC = "logic or timer"
SOUND = "sound chip"
SENSOR = "sensor"
OSCILLATOR = "crystal or oscillator"
OTHERS = (
    *(EEPROM, CLOCK, REGULATOR, SWITCH, OP_AMP, SHIFTER, SECURE, RAM, PROCESSOR, DRIVER),
    *(LOGIC, SOUND, SENSOR, OSCILLATOR),
)


class Sign(NamedTuple):
    """One sign: `words` that say what was seen and why it matters, and points for each thing."""

    words: str
    points: dict[str, int]


class Row(NamedTuple):
    """A sign that is found by words: where they stand, and the pattern that they have."""

    pattern: re.Pattern
    sign: Sign


def _row(pattern: str, words: str, **points: int) -> Row:
    named = {_SHORT[short]: count for short, count in points.items()}
    return Row(re.compile(rf"(?<![a-z0-9_])(?:{pattern})(?![a-z0-9_])"), Sign(words, named))


_SHORT = {
    **{"flash": FLASH, "parallel": PARALLEL, "nand": NAND, "managed": MANAGED, "eeprom": EEPROM},
    **{"clock": CLOCK, "regulator": REGULATOR, "switch": SWITCH, "op_amp": OP_AMP},
    **{"shifter": SHIFTER, "secure": SECURE, "ram": RAM, "processor": PROCESSOR},
    **{"driver": DRIVER, "logic": LOGIC, "sound": SOUND, "sensor": SENSOR},
    "oscillator": OSCILLATOR,
}

# What it is called by whoever looked at it. In the order of reading: a longer name comes first.
CALLED = (
    _row("e?mmc|ufs", "called a managed flash", managed=12),
    _row("nand(?: flash)?", "called NAND", nand=12),
    _row(r"eeproms?|e2prom|settings memory", "called an EEPROM", eeprom=9),
    _row(
        r"(?:serial |spi |nor |boot |firmware |program )?flash(?: chip| memory| rom)?|boot rom",
        "called a flash",
        flash=9,
        parallel=4,
    ),
    _row(
        "eproms?|u?v eprom|mask rom|bios(?: chip)?",
        "called a program memory",
        parallel=8,
        flash=4,
    ),
    _row("rtc|real[ -]?time clock|clock chip", "called a clock chip", clock=12),
    _row(
        r"(?:voltage |linear |switching )?regulators?|ldo|dc[/-]?dc(?: converter)?|buck|boost|"
        r"(?:power |step[ -]down |step[ -]up )converter|pmic|power manager",
        "called a regulator",
        regulator=12,
    ),
    _row(
        r"(?:dual |power |n[ -]channel |p[ -]channel )*(?:mosfets?|fets?|"
        r"transistors?)|load switch|"
        r"power switch|motor driver|h[ -]bridge|darlington",
        "called a transistor or switch",
        switch=12,
    ),
    _row(
        r"op[ -]?amps?|operational amplifier|comparators?|instrumentation amplifier|amplifier",
        "called an amplifier or comparator",
        op_amp=12,
    ),
    _row(
        r"(?:level|voltage) (?:shifters?|translators?|converters?)|"
        r"level[ -]?shifters?|translator",
        "called a level shifter",
        shifter=12,
    ),
    _row(
        r"secure element|crypto\w*|security chip|authenticat\w+(?: chip)?|tpm|"
        r"trusted platform\w*|"
        r"copy protection|dongle chip|lock chip",
        "called a security chip",
        secure=12,
    ),
    _row(r"(?:s?d?ram|ddr\d?l?|lpddr\d?|sdram|sram|dram|psram)s?", "called a RAM", ram=12),
    _row(
        r"(?:micro)?processor|cpu|mcu|microcontroller|soc|main chip|fpga|dsp|switch chip|asic|"
        r"(?:big|large|biggest|largest|square) (?:square )?(?:chip|ic)|chipset",
        "called a processor",
        processor=12,
    ),
    _row(
        r"(?:bus |line )?(?:transceiver|driver)s?|phy|uart(?: bridge)?|usb bridge|optocoupler|"
        r"can (?:chip|driver)",
        "called a line driver",
        driver=12,
    ),
    _row(r"logic(?: gates?)?|gates?|counter|shift register|timer|reset chip|watchdog|supervisor|"
         r"buffer|multiplexer|mux", "called logic", logic=12),
    _row(r"codec|audio(?: chip| amplifier)?|dac|sound chip", "called a sound chip", sound=12),
    _row(r"sensor|thermometer|accelerometer|gyro\w*", "called a sensor", sensor=12),
    _row("oscillator|crystal|resonator|quartz", "called a crystal or oscillator", oscillator=12),
)  # fmt: skip

_PULL_UPS = (
    r"(?:[\d.,]+ ?k\w* )?pull[ -]?ups?(?: resistors?)?(?: of)?(?: [\d.,]+ ?k\w*)?(?: resistors?)?"
)
_ON = r"(?:on|at|to|of|for) (?:the )?"

# What stands beside it.
NEAR = (
    _row(
        r"32(?:[.,]7\d*|k|\.768k)? ?k(?:hz)?\w*(?: crystal| quartz| xtal)?|"
        r"watch (?:crystal|quartz)|"
        r"32k(?:hz)? (?:crystal|quartz|xtal)|tuning[ -]fork\w*(?: crystal| quartz)?",
        "a crystal of 32 kHz beside it: that is what a clock chip counts by",
        clock=8,
    ),
    _row(
        r"\d+(?:[.,]\d+)? ?mhz(?: crystal| quartz| xtal)?",
        "a crystal of some MHz beside it: it clocks a processor or an interface",
        processor=3,
        driver=1,
    ),
    _row(
        r"crystals?|quartz|xtal|resonator",
        "a crystal beside it: a clock chip's, or the processor's",
        clock=4,
        processor=2,
    ),
    _row(
        r"(?:coin |button |lithium |backup )?(?:cell|batter(?:y|ies))(?! (?:connector|terminal))|"
        r"supercap\w*|gold ?cap|cr\d{4}",
        "a cell beside it keeps a clock or a working memory alive",
        clock=4,
        ram=2,
        regulator=1,
    ),
    _row(
        r"coils?|inductors?|chokes?|toroid",
        "a coil beside it: a switching regulator's",
        regulator=6,
        switch=3,
    ),
    _row(
        r"(?:big |large |bulk |electrolytic )+(?:cap(?:acitor)?s?|electrolytics?)|electrolytics?|"
        r"bulk cap\w*|tantalums?|rectifier|bridge|transformer|schottky(?: diode)?|heat ?sinks?|"
        r"copper (?:area|pour)|fuse",
        "power parts beside it: a supply's",
        regulator=3,
        switch=2,
    ),
    _row(
        r"(?:dc |power |barrel |mains |battery )+(?:jack|inlet|input|connector|socket|entry|plug|"
        r"terminals?|button)|barrel",
        "the power inlet is near",
        regulator=3,
        switch=3,
    ),
    _row(
        rf"{_PULL_UPS} {_ON}(?:pins? )?(?:1|3|7|chip select|n?cs\d?|ce|hold|wp|write protect)"
        r"(?:(?: ?,| and| &) ?(?:pins? )?(?:1|3|7|chip select|n?cs|hold|wp|"
        r"write protect|reset))*",
        "pull-ups on chip select, hold or write protect: pins that a serial flash has",
        flash=5,
        eeprom=1,
    ),
    _row(
        rf"(?:(?:two|2|a pair of|both|equal) )*{_PULL_UPS}(?: {_ON}(?:two|both|sda|"
        rf"scl|pins? 5|5|6|its)"
        r"(?:(?: ?,| and| &) ?(?:pins? )?(?:\d|sda|scl|lines))*)?|"
        r"(?:two|both) (?:tracks|traces|lines|pins|wires) (?:with|through|over) [\d.,]+ ?k\w*|"
        r"(?:resistors?|[\d.,]+ ?k(?:ohms?|Ω)?)(?: each)? to (?:the )?(?:supply|[\d.,v]+ ?v?)",
        "pull-ups beside it, as the two-wire bus needs them",
        eeprom=3,
        clock=2,
        secure=1,
    ),
    _row(
        r"(?:series|damping|termination) resistors?|(?:22|27|33|47|68)(?: ?(?:ohm|r|ω))s?"
        r"(?: resistors?)?(?: in (?:series|its lines|the lines))?",
        "small resistors in its lines, as fast clocks and data need them",
        flash=2,
        ram=1,
    ),
    _row(
        r"audio jack|headphones?(?: jack)?|speakers?|microphones?|loudspeaker|volume\w*|pickup|"
        r"phono|line (?:in|out)|potentiometer|audio\w*",
        "sound goes in or out beside it",
        op_amp=4,
        sound=4,
    ),
    _row(
        r"(?:screw |bus )?terminals?(?: block)?|db ?9|de ?9|rj ?11|serial port|"
        r"rs[ -]?(?:232|485|422)"
        r"(?: connector| port)?|can (?:bus|connector)|field ?bus",
        "a socket for a line beside it",
        driver=5,
    ),
    _row(
        r"(?:programming|debug|jtag|service|isp) (?:header|connector|pads?|port)|"
        r"test ?(?:points?|pads?)"
        r"(?: on (?:its|the) (?:lines|pins))?|pin header",
        "a header or test points for programming beside it",
        flash=2,
        processor=1,
    ),
    _row(
        r"usb(?:[ -]?c)?(?: (?:socket|port|connector|jack))?",
        "a USB socket is near",
        driver=2,
        switch=2,
        regulator=1,
    ),
    _row(
        r"(?:ethernet|network|lan|rj ?45)(?: (?:jack|socket|port|chip|transformer|"
        r"magnetics|controller))?",
        "the network socket is near, whose controller keeps its address in a small EEPROM",
        eeprom=2,
        driver=2,
    ),
    _row(
        r"(?:ink|toner|cartridge|smart ?card|sim|battery pack|"
        r"dongle)(?: (?:contacts?|slot|socket|"
        r"connector|reader))?",
        "contacts for something that must prove itself",
        secure=5,
        eeprom=1,
    ),
    _row(
        r"sd (?:card|slot)\w*|card slot|display|lcd|screen|touch\w*|ribbon\w*|flat cable|camera",
        "a socket of another supply's part beside it",
        shifter=2,
        driver=1,
    ),
    _row(
        r"sensors?|thermistors?|ntc|load cell|strain gauge|probe|thermocouple|photodiode|shunt",
        "something that is measured stands beside it",
        op_amp=4,
        sensor=1,
    ),
    _row(
        r"motors?|steppers?|solenoids?|relays?|fans?|heaters?|print ?head|led strings?|backlight",
        "something that takes current stands beside it",
        switch=5,
        driver=1,
        regulator=1,
    ),
    _row(
        r"(?:two|both|different) (?:supplies|voltages|rails)|"
        r"(?:between )?1[.,]8 ?v? (?:and|to|/) (?:3[.,]3|5) ?v?|3[.,]3 ?v? (?:and|"
        r"to|/) (?:1[.,]8|5) ?v?",
        "it stands between two supplies",
        shifter=5,
    ),
    _row(
        r"(?:s?dram|ddr\d?|ram|working memory)(?: chips?)?",
        "working memory is near: such a processor fetches its program from outside",
        flash=1,
        nand=1,
        managed=1,
        ram=2,
    ),
    _row(
        r"fpga|cpld|programmable logic",
        "programmable logic is near, which loads itself from a serial flash",
        flash=2,
    ),
    _row(
        r"wi-?fi\w*|wlan|bluetooth|antenna|radio|wireless(?: module)?|modem",
        "the radio part is near: such a flash may be the radio's own",
        flash=-1,
    ),
    _row(
        r"(?:micro)?(?:processor|controller)s?|cpu|mcu|µc|soc|main (?:chip|ic)|dsp|asic|chipset|"
        r"(?:big|large|square|biggest|largest|network|switch)[ -](?:\w+ )?(?:chip|ic|qfp|bga)|"
        r"southbridge|bga|qfp|system chip",
        "the processor is near",
        flash=2,
        parallel=2,
        nand=2,
        managed=2,
        ram=1,
    ),
)  # fmt: skip

# What the nets or the lines at its pins are called.
_SPI = r"(?:f|q|o|x|m|s|h)?spi[\w]*"
NETS = (
    _row(
        r"\w*(?:emmc|sdmmc|mmc)\w*|(?:sd_)?cmd|dat[0-7]",
        "its lines are those of a managed flash or a card",
        managed=6,
        shifter=1,
    ),
    _row(
        r"\w*nand\w*|\w*(?:ale|cle)\b|r/?b#?|ry/?by",
        "its lines are those of NAND",
        nand=7,
    ),
    _row(
        r"\w*(?:flash|boot|bios|firmware)\w*|(?:\w+_)?(?:s?rom|fw|nor)(?:_\w+)?|"
        r"[fqox]spi\w*|sf_\w+",
        "a line is named after flash or boot",
        flash=6,
        parallel=2,
    ),
    _row(
        r"\w*(?:s?io|dq|sd|d)[23]|\w*hold\w*",
        "it has hold, or third and fourth data lines: a serial flash's",
        flash=4,
        nand=1,
    ),
    _row(
        rf"{_SPI}|\w*(?:mosi|miso|sclk|copi|cipo|sdi|sdo)\w*",
        "clock, data in and data out: an SPI bus",
        flash=4,
        eeprom=2,
        sensor=2,
        driver=1,
        processor=1,
    ),
    _row(
        r"(?:\w+_)?(?:cs|ce|ss|ncs|csn|s)(?:[#n\d])?(?:_\w+)?|chip select",
        "it has a chip select",
        flash=2,
        parallel=1,
        nand=1,
        eeprom=1,
        ram=1,
        sensor=1,
    ),
    _row(
        r"\w*(?:sda|scl|i2c|iic|twi|smb(?:us|clk|dat))\w*|two wires?",
        "a two-wire bus: no serial flash of this kind speaks it",
        eeprom=6,
        clock=4,
        secure=4,
        sensor=4,
        shifter=1,
    ),
    _row(
        r"a0[ ,/]*a1[ ,/]*(?:and )?a2",
        "three address pins: an EEPROM of two wires",
        eeprom=5,
        flash=-2,
    ),
    _row(
        r"\w*(?:ras|cas|dqs|dqm|udqs|ldqs|cke|odt|ddr|sdram|dram)\w*|ba[0-3]|"
        r"dq(?:[4-9]|\d\d)|ma\d+",
        "its lines are those of a dynamic memory",
        ram=8,
    ),
    _row(
        r"(?:v?cc|vdd|v)[ab]|a[1-8][ _/-]?(?:to[ _])?b[1-8]|dir|\w+_(?:1v8|3v3|5v)",
        "its lines have two sides of different supply",
        shifter=7,
    ),
    _row(
        r"\w*(?:sw|lx|fb|bst|boost|phase|comp|pgood|pg|adj|vin|vout|ss/tr)\d?|"
        r"vin_\w+|vout_\w+|en",
        "its lines are those of a regulator",
        regulator=6,
        switch=2,
    ),
    _row(
        r"\w*(?:gate|drain|source|ugate|lgate|hgate|motor|coil)\w*|[gsd][12]|[hl]g|pwm\w*",
        "its lines are those of a switch for current",
        switch=7,
        regulator=1,
    ),
    _row(
        r"\w*in[+-]|\w*(?:inp|inn|outa|outb|ain|aout|audio\w*|vref|sense|mic)\d?|"
        r"non-?inv\w*|out[12]",
        "its lines are those of an amplifier",
        op_amp=6,
        sound=2,
    ),
    _row(
        r"\w*(?:osc32|32k|sqw|vbat|rtc)\w*|x[12io]|xin|xout|xtal\w*|int[ab]?",
        "its lines are those of a clock chip",
        clock=6,
    ),
    _row(
        r"\w*(?:rs485|rs232|can[hl]|txd|rxd|uart)\w*|ro|re|de|di|tx|rx|t[12](?:in|out)|lin|d[+-]|"
        r"usb_?d\w*|\w*(?:mdi|txp|txn|rxp|rxn)\w*",
        "its lines are those of a line driver",
        driver=6,
    ),
    _row(
        r"\w*(?:bclk|lrck|lrclk|mclk|i2s|spk|hp[lr])\w*",
        "its lines carry sound",
        sound=8,
    ),
    _row(
        r"\w*(?:swi|auth|secure|crypto|1[ -]?wire|one[ -]wire|iso7816)\w*",
        "its line asks for proof",
        secure=6,
    ),
    _row(
        r"a(?:0|\[\d+:0\])? ?(?:-|to|\.\.|…)? ?a?1\d|a1\d|address (?:bus|lines)|"
        r"d0 ?(?:-|to|\.\.) ?d(?:7|15)|"
        r"d[4-7]|d1[0-5]|(?:data|address)(?: and (?:data|address))? (?:bus|lines)|"
        r"many (?:address|data)[ \w]*",
        "address and data lines side by side: a parallel memory",
        parallel=5,
        ram=3,
        nand=1,
    ),
    _row(r"clk|sck|ck|clock", "it has a clock line", flash=1, sensor=1, ram=1, sound=1, eeprom=1),
    _row(
        r"do|so|q|si|dq0|s?io[01]|wp\w*|write protect",
        "it has the data lines of a serial memory",
        flash=2,
        eeprom=2,
    ),
)  # fmt: skip

# What was measured or seen at the chip itself.
_AT_START = (
    r"(?:at|after|on|during|in|from)(?: the)?(?: first)? ?(?:start\w*|"
    r"power[ -]?(?:on|up)|boot\w*|reset|"
    r"switch(?:ing)?[ -]on|second)[ \w]*"
)
FOUND = (
    _row(
        rf"(?:\w+ )*(?:no|not|never|without|nothing|n.t)[ \w]*(?:activity|pulses?|busy|active|"
        rf"toggl\w+|signal|moves?|moving|change[sd]?)(?:[ \w]*{_AT_START})?|"
        rf"(?:\w+ )*(?:(?:stays?|rests?|remains?) (?:\w+)|idle|silent|dead|quiet|"
        rf"steady|flat)[ \w]*"
        rf"{_AT_START}|(?:cs|chip select|clock|clk) (?:always |just )?(?:stays?|rests?|remains?) "
        rf"(?:high|low|idle|still)(?: all the time| always| for ever)?",
        "nothing moves at it while the board starts",
        flash=-7,
        parallel=-7,
        nand=-7,
        managed=-7,
    ),
    _row(
        r"(?:\w+ )*(?:busy|active|activity|pulses?|moves?|"
        r"written)[ \w]*(?:settings?|sav\w+|stored|"
        r"shut ?down|switch(?:ed|ing)?[ -]off|power[ -]?(?:off|down))[ \w]*",
        "it is busy when settings are kept",
        eeprom=5,
        flash=-2,
    ),
    _row(
        rf"(?:[\w]+ )?(?:(?:chip select|cs|clock|clk|data|it|line|lines|"
        rf"pin \d) )*(?:is |are |goes |go )?"
        rf"(?:busy|active|activity|bursts?|pulses?|toggl\w+|low|moves?|falls)[ \w]*{_AT_START}",
        "it is busy while the board starts",
        flash=7,
        parallel=6,
        nand=6,
        managed=6,
        ram=4,
    ),
    _row(
        r"(?:a )?(?:(?:white|red|green|blue|yellow|black|colou?red|colou?r|paint|painted) )+dot|"
        r"(?:a )?(?:dot|spot|dab|blob) of (?:\w+ )?paint|"
        r"(?:paper )?(?:sticker|label(?!l))[ \w.]*|version \w[\w.]*",
        "a sticker or a dot of paint: it was programmed before it was fitted",
        flash=4,
        parallel=5,
        nand=1,
        eeprom=2,
        processor=1,
    ),
    _row(
        r"in (?:a|its) (?:\w+ )?socket|socketed",
        "it stands in a socket, to be changed",
        parallel=4,
        flash=3,
    ),
    _row(
        r"(?:no|without)(?: an?)? (?:response|answer|id|identity)(?: (?:from|to|"
        r"of)(?: the)? \w+)?|"
        r"programmer (?:finds|sees|reads|gets|says) (?:nothing|no \w+)|does(?: not|n.t) answer",
        "the programmer had no answer: a clip that does not touch, no supply, a board that "
        "holds the lines, or no serial flash",
        flash=-1,
    ),
    _row("window(?:ed)?|quartz window", "a window for ultraviolet light", parallel=12),
    _row("hot|warm|gets hot|gets warm", "it gets warm", regulator=3, switch=3, processor=2),
    _row(
        r"(?:half|mid)[ -](?:the )?supply|mid[ -]?rail|half of the supply",
        "an output rests at half the supply",
        op_amp=6,
    ),
    _row(
        r"pin 4 (?:is |to |at |on )?(?:the )?(?:ground|gnd|0 ?v)",
        "pin 4 is ground",
        **{"flash": 1, "eeprom": 1, "clock": 1, "op_amp": 1, "regulator": 0},
    ),
    _row(
        r"pin 8 (?:is |to |at |on )?(?:the )?(?:supply|vcc|vdd|[\d.,v]+)",
        "pin 8 is the supply",
        **{"flash": 1, "eeprom": 1, "clock": 1, "op_amp": 1},
    ),
    _row(
        r"pin 4 (?:is )?(?:not|isn.t|no) [ \w]*|pin 8 (?:is )?(?:not|isn.t|"
        r"no) (?:the )?supply\w*|"
        r"pin 8 (?:is |to )?(?:the )?(?:ground|gnd)|pin 4 (?:is |to |at |"
        r"on )?(?:negative|minus|[-−][\d.]+)",
        "pins 4 and 8 are not ground and supply: no serial memory has its pins so",
        **{"flash": -8, "eeprom": -8, "op_amp": 2, "switch": 3, "regulator": 3, "shifter": 2},
    ),
    _row(
        r"(?:pins? )?(?:5[ ,-]+6[ ,-]+7[ ,-]+(?:and )?8|1[ ,-]+2[ ,-]+(?:and )?3|"
        r"5 to 8|1 to 3)(?: are)?"
        r" (?:joined|tied|bridged|connected|together|common|one net|the same net)|"
        r"(?:several|four|"
        r"three) (?:pins|leads) "
        r"(?:are )?(?:joined|tied|bridged|connected|together)|wide copper",
        "several of its leads are joined: a transistor's drain or source",
        switch=7,
        regulator=1,
    ),
    _row(
        r"(?:its )?own (?:clock|bus|spi|nets?|data|lines?)[ \w]*|(?:lines? |goes |go |run )*"
        r"(?:straight|only|directly|alone) to (?:the )?(?:processor|cpu|mcu|soc|"
        r"u\d+|ic\d+)[ \w]*|"
        r"point to point|(?:of )?equal length[ \w]*",
        "it has lines of its own to the processor",
        flash=3,
        nand=1,
        managed=1,
        ram=1,
    ),
    _row(
        r"shared (?:bus|clock|spi)|bus (?:is )?shared[ \w]*",
        "it shares its bus with others",
        eeprom=1,
        sensor=2,
        flash=-1,
    ),
)  # fmt: skip

# Numbers of the trade on chips that hold no firmware, whoever makes them.
_END = r"[a-z]{0,5}"
MARKS = (
    _row(
        rf"[a-z]{{0,5}}(?:358|324|2904|2902|4558|4560|4580|07[124]|08[124]|06[124]|"
        rf"553[24]|741|1458|833|"
        rf"2068|393|339|2903|311|6002|600[14]|27[24]|2272|8552|321|2604|604){_END}",
        "its number is that of op-amps or comparators",
        op_amp=12,
    ),
    _row(
        rf"[a-z]{{0,5}}(?:7[89][lm]?(?:05|06|08|09|10|12|15|18|24|33)|317[lm]?|337|"
        rf"1117|1085|1086|1084|"
        rf"2940|2950|2951|34063|2575|2576|2594|2596|3842|3843|384[45]|431|494|5033|"
        rf"6206|2931){_END}",
        "its number is that of regulators",
        regulator=12,
    ),
    _row(
        rf"[a-z]{{0,5}}(?:485|75176|3485|1487|232|3232|202|422|490|1050|2551|"
        rf"82c25[01]|2003|2803|490){_END}",
        "its number is that of line drivers",
        driver=12,
    ),
    _row(
        rf"[a-z]{{0,4}}(?:1302|1307|1337|1338|1339|3231|3232rtc|8563|8523|85063|8025|"
        rf"8583|4543|12887){_END}",
        "its number is that of clock chips",
        clock=12,
    ),
    _row(
        rf"[a-z]{{0,4}}(?:4435|4953|4946|4606|4800|4404|8205|9926|9435|9933|7413|"
        rf"3400|3401|2301|2302){_END}",
        "its number is that of MOSFETs",
        switch=12,
    ),
    _row(
        r"74[a-z]{2,4}\dt(?:45|245)\w*|[a-z]{2,3}0?10[1248]\w*|txb\w+|txs\w+|lsf\w+|"
        r"[a-z]{0,3}9306\w*",
        "its number is that of level shifters",
        shifter=12,
    ),
    _row(
        r"[57]4[a-z]{1,5}\d{1,4}[a-z]{0,4}|40\d\db\w*|[a-z]{0,3}555[a-z]*|[a-z]{0,3}7555[a-z]*",
        "its number is that of logic or timers",
        logic=12,
    ),
    _row(
        r"[a-z]{0,3}(?:ecc|sha)\d+\w*|slb\d+\w*|[a-z]{0,3}a71\w+",
        "its number is that of security chips",
        secure=12,
    ),
    _row(
        r"[\w-]*\d+mx?(?:4|8|16|32|64)(?:[a-z][\w-]*)?|[a-z]{0,4}(?:4164|41256|4464|"
        r"44256|41464|514256)"
        r"[\w-]*|[a-z]{0,4}(?:6116|6264|62256|628128|62128|622\d+)[\w-]*|[a-z]{0,2}\d*ddr\d\w*",
        "its number is that of working memories",
        ram=12,
    ),
    _row(
        rf"[a-z]{{0,4}}(?:386|4871|4990|8002|2822|2030|7294|4863|8403){_END}",
        "its number is that of amplifiers for sound",
        sound=12,
    ),
)  # fmt: skip

# What its letter on the board means.
LETTERS = (
    _row(r"q\d+\w*|t\d+|tr\d+", "Q or TR on the board names transistors", switch=6),
    _row(r"(?:vr|reg|ps)\d+\w*", "VR or REG on the board names regulators", regulator=6),
    _row(r"(?:x|y|xtal|osc)\d+\w*", "X or Y on the board names crystals", oscillator=9),
    _row(r"(?:d|cr|zd)\d+\w*", "D on the board names diodes", switch=7),
    _row(r"l\d+\w*", "L on the board names coils", regulator=7),
)
