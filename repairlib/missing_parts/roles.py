"""Words in which people say what a net is or what stands near: each role with its words.

Common practice of schematics and of net names printed on boards. A text has every role whose words
it holds. In the lists below a hyphen stands for a space, a hyphen, a low line or nothing, a star
for any letters and figures, # for figures.
"""

from __future__ import annotations

import re

_CHIPS = "u# u? ic#"
_CONVERTERS = """dc-dc dc/dc buck boost step-down step-up switching-regulator switching-converter
    smps switcher converter switch-mode"""
_REGULATORS = f"regulator* reg ldo 78# 78l# 78m# 79# 79l# 1117 317 {_CONVERTERS}"
_OUTPUTS = "output out vout o/p"
_INPUTS = "input vin in-pin"

# Role: its words, in small letters.
ROLES = {
    "ground": "gnd* agnd* dgnd* pgnd* sgnd ground grounded earth vss* chassis shield 0v 0-v",
    "rail": """
        rail rails supply power-plane vcc* vdd* vbus* vin* vbat* vsys* vout* vcore* vee vpp b+
        v+ vm vmot* avcc* avdd* dvdd* vio battery power-rail power-supply power-net power-line
        usb-power""",
    "negative rail": "vee negative-rail negative-supply minus-rail",
    "regulator": _REGULATORS,
    "converter": _CONVERTERS,
    "switch node": "switch-node switching-node sw sw# lx lx# phase-node ph-pin phase-pin",
    "storage coil": "power-inductor inductor storage-choke storage-coil l#",
    "feedback": "feedback fb vfb fb# adj adjust adjustment vsense sense-divider divider",
    "bootstrap": "bootstrap boot-pin bst cboot high-side-driver vboot boot-capacitor",
    "compensation": "comp compensation ith control-loop error-amplifier vc-pin loop",
    "soft start": "soft-start ss ss/tr tr/ss",
    "enable": "enable en shdn shutdown shut-down chip-enable on/off en-pin",
    "crystal": """
        crystal crystals xtal xtal# quartz resonator xin xout xi xo osc osc# osc-in osc-out
        osc32* oscillator x# y# xin# xout# #mhz #-mhz #-khz #.#-mhz #.#-khz #.#mhz #.#khz #khz""",
    "reset": "reset* nreset nrst rst rst# rstn mclr por power-on-reset /rst resetn",
    "shared bus": "sda* scl* i2c* i²c smbus two-wire one-wire 1-wire",
    "open drain": """
        open-drain open-collector int int# interrupt* irq irq# nirq nint alert power-good
        pgood pg fault write-protect wp hold chip-select cs cs# ncs boot0 boot1 boot-#
        boot-mode boot-select strap strapping button key push-button push-switch dip-switch
        card-detect mode-pin config* configuration-pin wake""",
    "interface": """
        usb hdmi ethernet pcie sata displayport mipi spi uart usart lvds sd-card sdio jtag lan
        rgb vga touch* rs232 rs-232 serial parallel display keyboard""",
    "data line": """
        mosi miso tx+ tx- rx+ rx- sclk clk clock sck tx tx# rx rx# txd rxd mdio mdc data
        data-line data-bus data-pin data-pair address address-line dq# d# a# dp dm d+ d-
        signal swdio swclk tdi tdo tck tms led-data gpio* io# pwm""",
    "fast pair": """
        usb hdmi lvds ethernet lan pcie sata displayport mipi d+ d- dp dm tx+ tx- rx+ rx-""",
    "bus pair": """
        canh canl can-h can-l can-bus can-transceiver can-driver rs-485 rs485 485 rs-422
        bus-wire* bus-line* dmx
        line-a line-b twisted-pair""",
    "connector": """
        connector connectors socket sockets jack port header plug terminal terminals usb-a
        usb-b usb-c receptacle rj45 card-edge cable external outside hdmi antenna card-slot
        slot j# cn# con# screw-terminal microusb micro-usb""",
    "power input": """
        dc-input dc-inlet dc-socket dc-jack dc-plug power-input power-inlet power-socket
        power-jack power-entry power-connector supply-input supply-connector supply-socket barrel*
        vbus
        adapter adaptor power-in battery-terminal* battery-connector battery-holder
        battery-contact* battery-plus battery-pack input-of-the-board board-input raw-input
        incoming vin-raw power-port mains-adapter dc-in 12v-input 24v-input 5v-input
        wall-adapter supply-inlet""",
    "chip": f"""
        {_CHIPS} chip ic processor micro* mcu cpu memory flash eeprom logic gate-array fpga
        asic soc driver codec sensor controller phy buffer transceiver 74* ram dram op-amp""",
    "supply pin": """
        supply-pin power-pin vcc-pin vdd-pin avcc-pin avdd-pin bypass by-pass decoup* de-coup*
        supply-pins power-pins vddio-pin""",
    "chip pin": f"pin pins input output leg ball gpio* port-pin {_CHIPS}",
    "gate": "gate mosfet fet gate-driver",
    "gate itself": "gate gates gate-pin",
    "base": "base npn pnp bjt",
    "transistor": "transistor mosfet fet npn pnp bjt q# drain collector emitter",
    "switched end": "drain collector",
    "source end": """
        source sources source-pin emitter low-side lower-mosfet* lower-fet* lower-transistor*
        lower-switch* bottom-mosfet* bottom-fet*""",
    "emitter": "emitter emitters",
    "optocoupler": "opto* photo-coupler photocoupler photo-transistor phototransistor",
    "loudspeaker": """
        speaker speakers loudspeaker loudspeakers woofer tweeter spk spk+ spk- spkr driver-unit
        speaker-terminal* speaker-output zobel""",
    "balance": "balanc* bleed* discharge-resistor discharges cell-balanc*",
    "magnetics": """
        centre-tap* center-tap* magnetics ethernet-transformer* lan-transformer* bob-smith
        pulse-transformer* lan-magnetics""",
    "motor": "motor motors brushed brushes brush",
    "resistor": "r# resistor trimmer",
    "LED": """
        led leds led# indicator backlight back-light status-lamp power-lamp light-emitting
        light-pipe blink* glow*""",
    "LED string": "backlight back-light leds led-string* led-driver* led-strip*",
    "LED driver": "led-driver* backlight-driver* backlight-boost*",
    "coil": "relay solenoid coil motor fan buzzer valve k# actuator inductive-load",
    "sense": """
        shunt current-sens* current-monitor* current-limit* current-measur* high-side-sens*
        low-side-sens* isen* i-sense* csp csn cs+ cs- sense sense+ sense- kelvin sns isns
        iprobe""",
    "sound": """
        audio sound amp amplifier preamp pre-amp codec line-in line-out speaker loudspeaker
        headphone headphones mic microphone guitar volume mixer tone stereo video composite""",
    "amplifier input": """
        op-amp opamp op-amp's minus-input plus-input negative-input inverting non-inverting
        inverting-input comparator in+ in- summing gain
        virtual-ground""",
    "slow input": """
        adc adc# ain ain# analog analogue sensor thermistor potentiometer wiper thermocouple
        probe""",
    "timer": """
        timer 555 556 monostable one-shot timing rc rc-network rt/ct rt ct threshold trigger
        discharge-pin thres trig delay time-constant multivibrator flasher cext rext r/c
        watchdog""",
    "mains": """
        mains live neutral primary line-filter 230v 230-v 240v 120v-ac 110v-ac 120-v-ac
        115-v-ac hot-side hot-ground hot-gnd isolation-barrier x-cap* y-cap* iec-inlet
        ac-input ac-inlet ac-line 325-v 320-v rectified-mains mains-*""",
    "radio": "rf antenna aerial matching u.fl balun wifi wi-fi bluetooth gps",
    "reference": """
        vref vref+ reference-output voltage-reference 431 tl431 shunt-regulator aref
        reference-pin reference-voltage reference-input ref-pin bandgap""",
    "analogue supply": """
        +#va #va #v#a avcc* avdd* vdda* vcca* analog-supply analogue-supply analog-# pll vpll
        analogue-rail analog-rail""",
    "pull": "pull-up pull-ups pull-down pulled pulls pull-up-resistor",
    "battery": "batter* battery* bms li-ion lithium* lipo accumulator cell-# cells cordless",
    "rectifier": "bridge-rectifier rectifier-bridge rectifier",
    "temperature": """
        inrush ntc ptc thermistor temperature-pin temperature-input temp temp-pin pin-t t-pin
        temp-sens* therm ts-pin overheat* over-temperature""",
    "touched": "button key push-button push-switch keypad touch* contact contacts front-panel",
}
_VOLTS = r"(?<![\w.])[+-]?\d+(?:\.\d+)?[ ]?v(?:olts?|dc|[ad])?(?!\w)|(?<!\w)\+?\d+v\d+[a-z]?(?!\w)"


def _one_of(words: str) -> str:
    """The pattern of a list of words."""
    patterns = []
    for word in words.split():
        pattern = re.escape(word).replace(r"\#", r"\d+").replace(r"\*", r"\w*")
        patterns.append(pattern.replace(r"\-", "[ -]?") if word[-1] != "-" else pattern)
    return rf"(?<!\w)(?:{'|'.join(patterns)})(?!\w)"


def _end_of(device: str, ends: str) -> str:
    """The pattern of "regulator U2 output" and of "output of the regulator"."""
    one, other = _one_of(device), _one_of(ends)
    of = r"(?:pin |caps? |capacitors? )?(?:of |at )(?:the )?(?:\w+ )?"
    return rf"{one}[\w /'()-]{{0,24}}?{other}|{other} {of}{one}"


_PATTERNS = {role: _one_of(words) for role, words in ROLES.items()} | {
    "rail": f"{_one_of(ROLES['rail'])}|{_VOLTS}",
    "negative rail": _one_of(ROLES["negative rail"]) + r"|(?<![\w.])-[ ]?\d+(?:\.\d+)?[ ]?v(?!\w)",
    "regulator output": _end_of(_REGULATORS, _OUTPUTS) + r"|(?<!\w)vout(?!\w)",
    "regulator input": _end_of(_REGULATORS, _INPUTS) + r"|(?<!\w)vin[ ]pin(?!\w)",
}
_SEEN = {role: re.compile(pattern) for role, pattern in _PATTERNS.items()}
_DENIED = re.compile(r"\b(?:no|not|without|nowhere near|far from|away from)\b[^,;.\n]*")


def roles_in(text: str) -> frozenset[str]:
    """Every role that the words of `text` name; what they deny is left out.

    >>> sorted(roles_in("+3.3 V")), sorted(roles_in("GND, no crystal near"))
    (['rail'], ['ground'])
    """
    plain = _DENIED.sub(" ", _plain(text))
    named = {role for role, seen in _SEEN.items() if seen.search(plain)}
    if "ground" in named and not _SEEN["rail"].search(_SEEN["ground"].sub(" ", plain)):
        named.discard("rail")  # 0 V
    return frozenset(named)


def words_named(text: str) -> list[tuple[int, int]]:
    """Where in `text` words stand that name a role, as pairs of begin and end."""
    plain = _plain(text)
    return [found.span() for seen in _SEEN.values() for found in seen.finditer(plain)]


def _plain(text: str) -> str:
    """`text` in small letters, of the same length; a low line parts words, as in USB_D+."""
    small = "".join([one.lower() if len(one.lower()) == 1 else one for one in text])
    return small.replace("_", " ")
