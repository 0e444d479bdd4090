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

    def found_in(self, text: str) -> re.Match | None:
        """Where its words stand in a text of small letters, unless they are said not to be there.

        >>> row_of("stickers?", "").found_in("no white sticker") is None
        True
        >>> row_of("stickers?", "").found_in("not far from a sticker") is None
        False
        """
        for match in self.pattern.finditer(text):
            before, behind = text[: match.start()], text[match.end() :]
            if not (_DENIED_BEFORE.search(before) or _DENIED_BEHIND.match(behind)):
                return match
        return None


# "no white sticker", "without any crystal", "sticker missing": at most two words lie between.
_DENIED_BEFORE = re.compile(
    r"(?<![a-z0-9_])(?:no|not|never|without|neither|nor|lacks?|lacking|isn.t|hasn.t|doesn.t)"
    r"(?: (?:an?|any|the))?(?: (?!far|only|just|more|less|long|yet)[\w-]+){0,2} ?$"
)
_DENIED_BEHIND = re.compile(r" (?:is |are |was |were )?(?:missing|absent|not there)(?![a-z])")


def row_of(pattern: str, words: str, **points: int) -> Row:
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
    row_of("e?mmc|ufs", "called a managed flash", managed=12),
    row_of("nand(?: flash)?", "called NAND", nand=12),
    row_of(r"eeproms?|e2prom|settings memory", "called an EEPROM", eeprom=9),
    row_of(
        r"(?:serial |spi |nor |boot |firmware |program )?flash(?: chip| memory| rom)?|boot rom",
        "called a flash",
        flash=9,
        parallel=4,
    ),
    row_of(
        "eproms?|u?v eprom|mask rom|bios(?: chip)?",
        "called a program memory",
        parallel=8,
        flash=4,
    ),
    row_of("rtc|real[ -]?time clock|clock chip", "called a clock chip", clock=12),
    row_of(
        r"(?:voltage |linear |switching )?regulators?|ldo|dc[/-]?dc(?: converter)?|buck|boost|"
        r"(?:power |step[ -]down |step[ -]up )converter|pmic|power manager",
        "called a regulator",
        regulator=12,
    ),
    row_of(
        r"(?:dual |power |n[ -]channel |p[ -]channel )*(?:mosfets?|fets?|"
        r"transistors?)|load switch|"
        r"power switch|motor driver|h[ -]bridge|darlington",
        "called a transistor or switch",
        switch=12,
    ),
    row_of(
        r"op[ -]?amps?|operational amplifier|comparators?|instrumentation amplifier|amplifier",
        "called an amplifier or comparator",
        op_amp=12,
    ),
    row_of(
        r"(?:level|voltage) (?:shifters?|translators?|converters?)|"
        r"level[ -]?shifters?|translator",
        "called a level shifter",
        shifter=12,
    ),
    row_of(
        r"secure element|crypto\w*|security chip|authenticat\w+(?: chip)?|tpm|"
        r"trusted platform\w*|"
        r"copy protection|dongle chip|lock chip",
        "called a security chip",
        secure=12,
    ),
    row_of(r"(?:s?d?ram|ddr\d?l?|lpddr\d?|sdram|sram|dram|psram)s?", "called a RAM", ram=12),
    row_of(
        r"(?:micro|co)?processors?|cpu|mcu|[µu]c|micro-?controllers?|soc|main chip|fpga|cpld|dsp|"
        r"switch chip|asic|(?:embedded|keyboard|system) controller|ec|kbc|scaler|pch|"
        r"(?:standby|system|main|single[ -]chip) micro|(?:\w+ )?(?:epoxy )?blob(?: of epoxy)?|"
        r"chip on board|glob[ -]?top|"
        r"(?:big|large|biggest|largest|square) (?:square )?(?:chip|ic)|chipset",
        "called a processor",
        processor=12,
    ),
    row_of(
        r"(?:bus |line )?(?:transceiver|driver)s?|phy|uart(?: bridge)?|usb bridge|optocoupler|"
        r"can (?:chip|driver)",
        "called a line driver",
        driver=12,
    ),
    row_of(r"logic(?: gates?)?|gates?|counter|shift register|timer|reset chip|watchdog|supervisor|"
         r"buffer|multiplexer|mux", "called logic", logic=12),
    row_of(r"codec|audio(?: chip| amplifier)?|dac|sound chip", "called a sound chip", sound=12),
    row_of(r"sensor|thermometer|accelerometer|gyro\w*", "called a sensor", sensor=12),
    row_of("oscillator|crystal|resonator|quartz", "called a crystal or oscillator", oscillator=12),
)  # fmt: skip

_PULL_UPS = (
    r"(?:[\d.,]+ ?k\w* )?pull[ -]?ups?(?: resistors?)?(?: of)?(?: [\d.,]+ ?k\w*)?(?: resistors?)?"
)
_ON = r"(?:on|at|to|of|for) (?:the )?"

# What stands beside it.
NEAR = (
    row_of(
        r"32(?:[.,]7\d*|k|\.768k)? ?k(?:hz)?\w*(?: crystal| quartz| xtal)?|"
        r"watch (?:crystal|quartz)|"
        r"32k(?:hz)? (?:crystal|quartz|xtal)|tuning[ -]fork\w*(?: crystal| quartz)?",
        "a crystal of 32 kHz beside it: that is what a clock chip counts by",
        clock=8,
    ),
    row_of(
        r"\d+(?:[.,]\d+)? ?mhz(?: crystal| quartz| xtal)?",
        "a crystal of some MHz beside it: it clocks a processor or an interface",
        processor=3,
        driver=1,
    ),
    row_of(
        r"crystals?|quartz|xtal|resonator",
        "a crystal beside it: a clock chip's, or the processor's",
        clock=4,
        processor=2,
    ),
    row_of(
        r"(?:coin |button |lithium |backup )?(?:cell|batter(?:y|ies))(?! (?:connector|terminal))|"
        r"supercap\w*|gold ?cap|cr\d{4}",
        "a cell beside it keeps a clock or a working memory alive",
        clock=4,
        ram=2,
        regulator=1,
    ),
    row_of(
        r"coils?|inductors?|chokes?|toroid",
        "a coil beside it: a switching regulator's",
        regulator=6,
        switch=3,
    ),
    row_of(
        r"(?:big |large |bulk |electrolytic )+(?:cap(?:acitor)?s?|electrolytics?)|electrolytics?|"
        r"bulk cap\w*|tantalums?|rectifier|bridge|transformer|schottky(?: diode)?|heat ?sinks?|"
        r"copper (?:area|pour)|fuse",
        "power parts beside it: a supply's",
        regulator=3,
        switch=2,
    ),
    row_of(
        r"(?:dc |power |barrel |mains |battery )+(?:jack|inlet|input|connector|socket|entry|plug|"
        r"terminals?|button)|barrel",
        "the power inlet is near",
        regulator=3,
        switch=3,
    ),
    row_of(
        rf"{_PULL_UPS} {_ON}(?:pins? )?(?:1|3|7|chip select|n?cs\d?|ce|hold|wp|write protect)"
        r"(?:(?: ?,| and| &) ?(?:pins? )?(?:1|3|7|chip select|n?cs|hold|wp|"
        r"write protect|reset))*",
        "pull-ups on chip select, hold or write protect: pins that a serial flash has",
        flash=5,
        eeprom=1,
    ),
    row_of(
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
    row_of(
        r"(?:series|damping|termination) resistors?|(?:22|27|33|47|68)(?: ?(?:ohm|r|ω))s?"
        r"(?: resistors?)?(?: in (?:series|its lines|the lines))?",
        "small resistors in its lines, as fast clocks and data need them",
        flash=2,
        ram=1,
    ),
    row_of(
        r"audio jack|headphones?(?: jack)?|speakers?|microphones?|loudspeaker|volume\w*|pickup|"
        r"phono|line (?:in|out)|potentiometer|audio\w*",
        "sound goes in or out beside it",
        op_amp=4,
        sound=4,
    ),
    row_of(
        r"(?:screw |bus )?terminals?(?: block)?|db ?9|de ?9|rj ?11|serial port|"
        r"rs[ -]?(?:232|485|422)"
        r"(?: connector| port)?|can (?:bus|connector)|field ?bus",
        "a socket for a line beside it",
        driver=5,
    ),
    row_of(
        r"(?:programming|debug|jtag|service|isp) (?:header|connector|pads?|port)|"
        r"test ?(?:points?|pads?)"
        r"(?: on (?:its|the) (?:lines|pins))?|pin header",
        "a header or test points for programming beside it",
        flash=2,
        processor=1,
    ),
    row_of(
        r"usb(?:[ -]?c)?(?: (?:socket|port|connector|jack))?",
        "a USB socket is near",
        driver=2,
        switch=2,
        regulator=1,
    ),
    row_of(
        r"(?:ethernet|network|lan|rj ?45)(?: (?:jack|socket|port|chip|transformer|"
        r"magnetics|controller))?",
        "the network socket is near, whose controller keeps its address in a small EEPROM",
        eeprom=2,
        driver=2,
    ),
    row_of(
        r"(?:ink|toner|cartridge|smart ?card|sim|battery pack|"
        r"dongle)(?: (?:contacts?|slot|socket|"
        r"connector|reader))?",
        "contacts for something that must prove itself",
        secure=5,
        eeprom=1,
    ),
    row_of(
        r"sd (?:card|slot)\w*|card slot|display|lcd|screen|touch\w*|ribbon\w*|flat cable|camera",
        "a socket of another supply's part beside it",
        shifter=2,
        driver=1,
    ),
    row_of(
        r"sensors?|thermistors?|ntc|load cell|strain gauge|probe|thermocouple|photodiode|shunt",
        "something that is measured stands beside it",
        op_amp=4,
        sensor=1,
    ),
    row_of(
        r"motors?|steppers?|solenoids?|relays?|fans?|heaters?|print ?head|led strings?|backlight",
        "something that takes current stands beside it",
        switch=5,
        driver=1,
        regulator=1,
    ),
    row_of(
        r"(?:two|both|different) (?:supplies|voltages|rails)|"
        r"(?:between )?1[.,]8 ?v? (?:and|to|/) (?:3[.,]3|5) ?v?|3[.,]3 ?v? (?:and|"
        r"to|/) (?:1[.,]8|5) ?v?",
        "it stands between two supplies",
        shifter=5,
    ),
    row_of(
        r"(?:s?dram|ddr\d?|ram|working memory)(?: chips?)?",
        "working memory is near: such a processor fetches its program from outside",
        flash=1,
        nand=1,
        managed=1,
        ram=2,
    ),
    row_of(
        r"fpga|cpld|programmable logic",
        "programmable logic is near, which loads itself from a serial flash",
        flash=2,
    ),
    row_of(
        r"wi-?fi\w*|wlan|bluetooth|antenna|radio|wireless(?: module)?|modem",
        "the radio part is near: such a flash may be the radio's own",
        flash=-1,
    ),
    row_of(
        r"(?:micro|co)?-?(?:processor|controller)s?|cpu|mcu|[µu]c|soc|main (?:chip|ic)|dsp|asic|"
        r"chipset|pch|scaler|ec|kbc|blob|(?:standby|system|main) micro|"
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
    row_of(
        r"\w*(?:emmc|sdmmc|mmc)\w*|(?:sd_)?cmd|dat[0-7]",
        "its lines are those of a managed flash or a card",
        managed=6,
        shifter=1,
    ),
    row_of(
        r"\w*nand\w*|(?:\w*_|n|f)?(?:ale|cle)\d?|r/?b#?|ry/?by",
        "its lines are those of NAND",
        nand=7,
    ),
    row_of(
        r"\w*(?:flash|boot|bios|firmware)\w*|(?:\w+_)?(?:s?rom|fw|nor)(?:_\w+)?|"
        r"[fqox]spi\w*|sf_\w+",
        "a line is named after flash or boot",
        flash=6,
        parallel=2,
    ),
    row_of(
        r"\w*(?:s?io|dq|sd|d)[23]|(?:\w*_|n)?hold(?:[#n]|_\w+)?",
        "it has hold, or third and fourth data lines: a serial flash's",
        flash=4,
        nand=1,
    ),
    row_of(
        rf"{_SPI}|\w*(?:mosi|miso|sclk|copi|cipo|sdi|sdo)\w*",
        "clock, data in and data out: an SPI bus",
        flash=4,
        eeprom=2,
        sensor=2,
        driver=1,
        processor=1,
    ),
    row_of(
        r"(?:\w+_)?(?:cs|ce|ss|ncs|csn|s)(?:[#n\d])?(?:_\w+)?|chip select",
        "it has a chip select",
        flash=2,
        parallel=1,
        nand=1,
        eeprom=1,
        ram=1,
        sensor=1,
    ),
    row_of(
        r"\w*(?:sda|scl|i2c|iic|twi|smb(?:us|clk|dat))\w*|two wires?",
        "a two-wire bus: no serial flash of this kind speaks it",
        eeprom=6,
        clock=4,
        secure=4,
        sensor=4,
        shifter=1,
    ),
    row_of(
        r"a0[ ,/]*a1[ ,/]*(?:and )?a2",
        "three address pins: an EEPROM of two wires",
        eeprom=5,
        flash=-2,
    ),
    row_of(
        r"(?:\w*_|n)?(?:[rc]as|[ul]?dqs|[ul]?dqm|cke|odt)(?:[#n\d]|_\w+)?|"
        r"\w*(?:ddr\d|sdram|dram)\w*|(?:\w*_)?ddr(?:_\w+)?|ba[0-3]|"
        r"dq(?:[4-9]|\d\d)|ma\d+",
        "its lines are those of a dynamic memory",
        ram=8,
    ),
    row_of(
        r"(?:v?cc|vdd|v)[ab]|a[1-8][ _/-]?(?:to[ _])?b[1-8]|dir|\w+_(?:1v8|3v3|5v)",
        "its lines have two sides of different supply",
        shifter=7,
    ),
    row_of(
        r"(?:\w*_)?(?:sw|lx|fb|bst|boost|phase|comp|pgood|pg|adj|vin|vout|ss/tr)\d?|"
        r"vin_\w+|vout_\w+|en",
        "its lines are those of a regulator",
        regulator=6,
        switch=2,
    ),
    row_of(
        r"(?:\w*_|[uhl])?(?:gate|drain|source|motor|coil)(?:_\w+|[a-d]?\d)?|"
        r"[gsd][12]|[hl]g|pwm\w*",
        "its lines are those of a switch for current",
        switch=7,
        regulator=1,
    ),
    row_of(
        r"(?:\w*_|[ab]|v)?in\d?[+-]|"
        r"(?:\w*_)?(?:inp|inn|outa|outb|ain|aout|audio\w*|vref|[iv]?sense|mic)\d?|"
        r"non-?inv\w*|out[12]",
        "its lines are those of an amplifier",
        op_amp=6,
        sound=2,
    ),
    row_of(
        r"\w*(?:osc32|32k|sqw|vbat|rtc)\w*|x[12io]|xin|xout|xtal\w*|int[ab]?",
        "its lines are those of a clock chip",
        clock=6,
    ),
    row_of(
        r"\w*(?:rs485|rs232|can[hl]|txd|rxd|uart)\w*|ro|re|de|di|tx|rx|t[12](?:in|out)|lin|d[+-]|"
        r"usb_?d\w*|\w*(?:mdi|txp|txn|rxp|rxn)\w*",
        "its lines are those of a line driver",
        driver=6,
    ),
    row_of(
        r"\w*(?:bclk|lrck|lrclk|mclk|i2s|spk|hp[lr])\w*",
        "its lines carry sound",
        sound=8,
    ),
    row_of(
        r"(?:\w*_)?(?:swi|auth|secure|crypto)(?:_\w+|\d)?|1[ -]?wire|one[ -]wire|iso7816\w*",
        "its line asks for proof",
        secure=6,
    ),
    row_of(
        r"a(?:0|\[\d+:0\])? ?(?:-|to|\.\.|…)? ?a?1\d|a1\d|address (?:bus|lines)|"
        r"d0 ?(?:-|to|\.\.) ?d(?:7|15)|"
        r"d[4-7]|d1[0-5]|(?:data|address)(?: and (?:data|address))? (?:bus|lines)|"
        r"many (?:address|data)[ \w]*",
        "address and data lines side by side: a parallel memory",
        parallel=5,
        ram=3,
        nand=1,
    ),
    row_of(r"clk|sck|ck|clock", "it has a clock line", flash=1, sensor=1, ram=1, sound=1, eeprom=1),
    row_of(
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
    row_of(
        r"(?:\w+ ){0,4}(?:no|not|never|without|nothing|n.t)[ \w]{0,60}"
        r"(?:activity|pulses?|busy|active|toggl\w+|signal|moves?|moving|change[sd]?)"
        rf"(?:[ \w]{{0,60}}{_AT_START})?|"
        r"(?:\w+ ){0,4}(?:(?:stays?|rests?|remains?) (?:\w+)|idle|silent|dead|quiet|steady|flat)"
        rf"[ \w]{{0,60}}{_AT_START}|"
        r"(?:cs|chip select|clock|clk) (?:always |just )?(?:stays?|rests?|remains?) "
        r"(?:high|low|idle|still)(?: all the time| always| for ever)?",
        "nothing moves at it while the board starts",
        flash=-7,
        parallel=-7,
        nand=-7,
        managed=-7,
    ),
    row_of(
        r"(?:\w+ ){0,4}(?:busy|active|activity|pulses?|moves?|"
        r"written)[ \w]{0,60}(?:settings?|sav\w+|stored|"
        r"shut ?down|switch(?:ed|ing)?[ -]off|power[ -]?(?:off|down))[ \w]{0,60}",
        "it is busy when settings are kept",
        eeprom=5,
        flash=-2,
    ),
    row_of(
        rf"(?:[\w]+ )?(?:(?:chip select|cs|clock|clk|data|it|line|lines|"
        rf"pin \d) )*(?:is |are |goes |go )?"
        rf"(?:busy|active|activity|bursts?|pulses?|toggl\w+|low|moves?|falls)[ \w]{{0,60}}"
        rf"{_AT_START}",
        "it is busy while the board starts",
        flash=7,
        parallel=6,
        nand=6,
        managed=6,
        ram=4,
    ),
    row_of(
        r"(?:a )?(?:(?:white|red|green|blue|yellow|black|colou?red|colou?r|paint|painted) )+dot|"
        r"(?:a )?(?:dot|spot|dab|blob) of (?:\w+ )?paint|"
        r"(?:paper |foil )?(?:stickers?|labels?)(?: (?:with |saying |reading )?(?:\w+ ){0,2}?"
        r"(?:version )?v?\d[\w.]*)?|version \w[\w.]*",
        "a sticker or a dot of paint: it was programmed before it was fitted",
        flash=4,
        parallel=5,
        nand=1,
        eeprom=2,
        processor=1,
    ),
    row_of(
        r"in (?:a|its) (?:\w+ )?socket|socketed",
        "it stands in a socket, to be changed",
        parallel=4,
        flash=3,
    ),
    row_of(
        r"(?:no|without)(?: an?)? (?:response|answer|id|identity)(?: (?:from|to|"
        r"of)(?: the)? \w+)?|"
        r"programmer (?:finds|sees|reads|gets|says) (?:nothing|no \w+)|does(?: not|n.t) answer",
        "the programmer had no answer: a clip that does not touch, no supply, a board that "
        "holds the lines, or no serial flash",
        flash=-1,
    ),
    row_of("window(?:ed)?|quartz window", "a window for ultraviolet light", parallel=12),
    row_of("hot|warm|gets hot|gets warm", "it gets warm", regulator=3, switch=3, processor=2),
    row_of(
        r"(?:half|mid)[ -](?:the )?supply|mid[ -]?rail|half of the supply",
        "an output rests at half the supply",
        op_amp=6,
    ),
    row_of(
        r"pin 4 (?:is |to |at |on )?(?:the )?(?:ground|gnd|0 ?v)",
        "pin 4 is ground",
        **{"flash": 1, "eeprom": 1, "clock": 1, "op_amp": 1, "regulator": 0},
    ),
    row_of(
        r"pin 8 (?:is |to |at |on )?(?:the )?(?:supply|vcc|vdd|[\d.,v]+)",
        "pin 8 is the supply",
        **{"flash": 1, "eeprom": 1, "clock": 1, "op_amp": 1},
    ),
    row_of(
        r"pin 4 (?:is )?(?:not|isn.t|no) [ \w]*|pin 8 (?:is )?(?:not|isn.t|"
        r"no) (?:the )?supply\w*|"
        r"pin 8 (?:is |to )?(?:the )?(?:ground|gnd)|pin 4 (?:is |to |at |"
        r"on )?(?:negative|minus|[-−][\d.]+)",
        "pins 4 and 8 are not ground and supply: no serial memory has its pins so",
        **{"flash": -8, "eeprom": -8, "op_amp": 2, "switch": 3, "regulator": 3, "shifter": 2},
    ),
    row_of(
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
    row_of(
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
    row_of(
        r"shared (?:bus|clock|spi)|bus (?:is )?shared[ \w]*",
        "it shares its bus with others",
        eeprom=1,
        sensor=2,
        flash=-1,
    ),
)  # fmt: skip

# What its letter on the board means.
LETTERS = (
    row_of(r"q\d+\w*|t\d+|tr\d+", "Q or TR on the board names transistors", switch=6),
    row_of(r"(?:vr|reg|ps)\d+\w*", "VR or REG on the board names regulators", regulator=6),
    row_of(r"(?:x|y|xtal|osc)\d+\w*", "X or Y on the board names crystals", oscillator=9),
    row_of(r"(?:d|cr|zd)\d+\w*", "D on the board names diodes", switch=7),
    row_of(r"l\d+\w*", "L on the board names coils", regulator=7),
)
