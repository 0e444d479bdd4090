"""Words by which people name the mains, a high voltage, and what only sounds like one.

Patterns for re.VERBOSE: a space that counts stands in brackets. Common practice.
"""

from __future__ import annotations

# Kind: its words, in small letters unless a letter's size tells it from another word.
MAINS_WORDS = r"""
    (?<!soft[ -])\b(?:motor[ -])?(?:run|running|start|starting)[ -]cap(?:acitor)?s?\b
    | \bhot[ -]wire\b | \bplugged[ -]in\b | \bprongs?\b | \brectified[ -](?:line|mains|ac)\b
    | \b(?:brown|blue)\b[^,;]{0,16}\b(?:brown|blue)\b[^,;]{0,6}\b(?:wires?|leads?|cores?)\b
    | \b(?:fluorescent|discharge[ -]lamp|lamp[ -]ballast|ballast[ -]of)\b | \bv[ld]r\b
    | \b(?:power|energy|electricity)[ -]meter\b
    | \binput\b[^,;]{0,30}\b(?:brick|psu|charger|mains[ ]adapt[eo]r)\b | \batx\b[^,;]{0,30}\binput\b
    | \b(?:wi-?fi|smart|wall|mains)[ -](?:socket|plug|switch)\b
    |    \bmains\b | \blive\b | \bneutral\b | \bprimary\b | \bline[ -]filter\b | \bhot[ -](?:side
        |ground|gnd)\b
    | \bcold[ -](?:side|ground|gnd)\b | \bisolation[ -]barrier\b | \biec[ -](?:inlet|320|socket)\b
    | \b(?:ac|mains)[ -](?:input|inlet|line|plug|cord|side)\b | \b(?:line|ac)[ -](?:voltage
        |cord|fuse)\b
    | \bwall[ -](?:socket|outlet|switch)\b | \bpower[ -]cord\b
    | \b(?:class[ -])?[xy][ -]?[12]?[ -](?:cap\w*|class|film|disc|safety|rated|suppress\w*)\b
    | \b[xy][12][ -](?:blue|yellow|ceramic|box)\b | \bacross[ -]the[ -]line\b
    | \b(?:opto[ -]?)?triacs?\b | \bmt[12]\b | \bthyristors?\b | \bscr\b | \bdiacs?\b
    | \bzero[ -]?cross\w* | \bphase[ -](?:control|cut|angle|and[ -]neutral|conductor)\b
    | \bfrom[ ](?:the[ ])?phase\b(?![ -](?:node|pin|a\b|b\b|c\b|u\b|v\b|w\b))
    | \bcapacitive[ -]dropper\b | \bdropper\b | \bpfc\b | \bpower[ -]factor\b
    | \bfusible[ -]resistor\b | \bled[ -](?:bulb|tube)\b | \bballast[ -](?:input|choke)\b
    | \bservo[ -]drive\b | \b(?:dc|intermediate)[ -](?:link|bus[ -]of)\b
        | \bfrequency[ -](?:converter|drive)\b
    | \b(?:induction|ceramic)[ -](?:hob|cooker)\b | \bsolid[ -]state[ -]relay\b
    | \bleakage[ -]breaker\b | \bsurge[ -]arrest\w* | \bmov\b
"""
HIGH_WORDS = r"""
    \b(?:output|power|rectifier|preamp)[ -](?:valve|tube)s?\b(?![ ]driver)
    | \bmicrowave\b(?![ -](?:sensor|radar|module|link|antenna|frequency|receiver|mixer))
    | \bhigh[ -]voltage\b | \bhigh[ -]tension\b | \bhundreds?[ ](?:of[ ])?volts\b | \bkilovolts?\b
    | \behv?t\b | \bextra[ -]high\b
    | \b(?:valve|tube|vacuum)[ -](?:amp\w*|pre-?amp\w*|radio|set|receiver|power|stage|tv|output
        |rectifier|socket|tester|heater)
    | \bvacuum[ -]tubes?\b | \b(?:triode|pentode|tetrode|thyratron|magnetron|klystron)\b
    | \bplate[ -](?:load|resistor|voltage|supply|circuit)\b | \bscreen[ -]grid\b
        | \bcontrol[ -]grid\b
    | \bgrid[ -](?:leak|stopper|pin)\b | \b(?:to|from|of)[ ](?:the[ ])?grid\b
        | \banode[ ]of[ ]V\d
    | \bcrt\b | \bpicture[ -]tube\b | \bcathode[ -]ray\b | \bfocus[ -](?:lead|anode|voltage
        |pot\w*)\b
    | \bflyback[ -]trans\w* | \bline[ -]output[ -](?:trans\w*|stage)\b
        | \bhorizontal[ -](?:output|deflection|drive)\b
    | \b(?:deflection|yoke|tripler|multiplier[ -]stack)\b | \bcascade[ -]multiplier\b
    | \b(?:photo|camera)?[ -]?flash[ -]?(?:tube|lamp|gun|cap\w*|unit|head)\b | \bphoto-?flash\b
    | \bstrobes?\b(?![ -](?:pin|line|signal)) | \bxenon\b | \bccfl\b | \bcold[ -]cathode\b
    | \bbacklight[ -]inverter\b | \bel[ -](?:panel|foil|wire|driver)\b | \belectroluminescent\b
    | \bmicro-?wave[ -](?:oven|transformer|capacitor|diode)\b | \boven[ -]hv\b
    | \bgeiger\b | \bphoto-?multiplier\b | \bnixie\b | \bplasma\b | \bneon\b | \bioni[sz]er\b
    | \belectric[ -]fence\b | \bfence[ -]energi[sz]er\b | \bigniters?\b | \bignition[ -]coil\b
        | \bspark[ -](?:plug|gap)\b
    | \bozone\b | \blaser[ -]tube\b | \bx-ray\b | \bdefibrillat\w* | \bbug[ -]zapper\b
        | \binsect[ -]killer\b
    | \bsolar[ -](?:string|inverter)\b | \bstring[ -]input\b | \btraction[ -]battery\b
        | \bwelder\b
    | \b(?:telephone|phone)[ -]line\b | \btip[ -]and[ -]ring\b | \bhv(?:[ -]?pin|[ -]section
        |dc)?\b
"""
# Printed in capitals: HT and EHT of valve sets; valves by their numbers.
HIGH_NAMES = r"""
    \bHT\+? | \bEHT\b
    | \b(?:EC|ECC|ECF|ECH|ECL|EF|EL|EM|EY|EZ|EBC|EABC|PC|PCC|PCF|PCL|PF|PL|PY|UCL|UL|UY|GZ|KT
        |DAF|DF|DK|DL)(?:8[0-9]|3[0-9]|4[0-3]|5[0-9]|6[0-9]|9[0-9]|1[0-9]|20[0-9]|50[0-9]|66
        |88)\b(?!-)
    | \b(?:12A[TUXY]7|12B[HY]7|5881|6550|6146|807|6(?:V6|SN7|SL7|L6|AQ5|BQ5|BQ7|CG7|BE6|J5|J6|F6
        |X4|X5|CA7)|5(?:U4|Y3|AR4)|35W4|50C5)[A-Z]{0,3}\b
"""
UNNAMED_WORDS = r"""
    \b(?:behind|at|of|after)[ ]the[ ](?:\w+[ ])?plug\b | \binrush\b | \b(?:tv|television)[ -]set\b
    |    \b(?:bridge[ -])?rectifiers?\b | \brectifier[ -]bridge\b | \bdiode[ -]bridge\b
    | \brelay'?s?[ -]contacts?\b | \bcontacts?[ ]of[ ](?:the[ ])?relay\b
    | \bbleeders?\b | \bsnubber\b(?=.*\bcontact)
    | \bsmps\b(?=.*\b(?:controller|start-?up)\b) | \btransformer\b(?=.*\bwindings?\b)
    | \bfour[ ](?:big[ ]|rectifier[ ])?diodes\b
    | \bsecondary\b[ -](?:winding|side|rail|output|ground|gnd|of)\b | \bdimmers?\b | \bignition\b
    | \bled[ -]lamps?\b | \bcharger[ ](?:input|plug|side)\b
"""
UNNAMED_NAMES = r"\bB\+(?!\w)"
# Sets that are fed from the wall, and whose low voltages are often not parted from it.
APPLIANCES = r"""
    \b(?:blender|kettle|toaster|fridge|freezer|refrigerator|dishwasher|vacuum[ -]cleaner|hoover)s?\b
    | \b(?:hand|stand|food)[ -]mixer\b | \b(?:washing|coffee|bread)[ -](?:machine|maker)\b
    | \b(?:tumble|hair|clothes)[ -]?dr[iy]er\b | \b(?:steam|clothes|flat)[ -]iron\b | \bboiler\b
    | \b(?:rice|slow|electric|gas)[ -]cooker\b | \bcooker\b | \boven\b | \bhob\b | \bcompressor\b
    | \b(?:fan|space|storage|water|room)[ -]heater\b | \bair[ -]condition\w* | \bheat[ -]pump\b
    | \b(?:smart|power)[ -]strip\b | \bpower[ -]brick\b | \bcorded\b | \bdish[ -]?washer\b
"""
PARTED = r"""
    \bbatter\w+ | \bcordless\b | \btransformer\b | \bisolated\b | \badapt[eo]r\b | \busb\b
    | \bthermocouple\b
"""
# A capacitor's class, where no crystal and no connector is called so.
CLASSES = r"\b[XY][12]\b"
NO_CLASS = (
    r"\b(?:crystal|quartz|xtal|[mk]hz|oscillator|resonator|connector|socket|header|pin|terminal)\b"
)
# A bridge of diodes or an inverter of power, unless these words say that it is another.
BRIDGES = r"\bbridge\b | \binverter\b"
OTHER_BRIDGES = r"""
    \bmosfets?\b | \bfets?\b | \bh-?bridge\b | \bmotor\b | \btransistors?\b | \bdriver\b
        | \bload[ -]cell\b
    | \bwheatstone\b | \bstrain\b | \b(?:usb|spi|uart|i2c|solder)\b | \b74\w+ | \bgate\b
        | \blogic\b | \bschmitt\b
"""
SOUND = r"(?:capsule|microphone|mic|pick-?up|volume|pot\w*|guitar|jack|xlr|audio|sound|tone|fader)"
# What sounds like the mains and is none of it.
EXCUSED = rf"""
    \bneutral[ -](?:position|gear|switch|zone|axis|point[ ]of[ ]the[ ]lever|density|grey|gray
        |sensor|lamp|light|led|stop)\b
    | \blive[ -](?:view|stream\w*|preview|data|tile|demo|mode|sound|set|show|mix\w*|picture
        |image|feed)\b
    | \bmains[ -](?:hum|frequency|noise|interference|ripple|reject\w*|buzz)\b
    | \b50[ -]?hz[ -](?:hum|notch|filter)\b
    | \bprimary[ -](?:colou?rs?|key|function|display|screen|button|input[ ]select\w*|boot|cell
        |battery|channel|clock|bus|i2c)\b
    | \b{SOUND}['s]*[ ](?:\w+[ ])?(?:hot|cold)[ -](?:side|end)\b
    | \b(?:hot|cold)[ -]side[ ](?:of[ ])?(?:the[ ])?(?:\w+[ ])?{SOUND}\b
    | \b(?:hot|cold)[ -]side[ ](?:of[ ])?(?:the[ ])?(?:peltier|heat[ ]?exchanger|thermocouple)\b
    | \b(?:no|not|not[ ]on|not[ ]on[ ]the|without|away[ ]from|far[ ]from
        |isolated[ ]from)[ ](?:the[ ]|any[ ])?
      (?:mains|high[ -]voltage|primary)\b
    | \b(?:spi|nor|nand|bios|serial)[ -]flash\b
    | \bplasma[ -]cut\w*|\bneon[ -](?:green|orange|yellow)\b
    """
