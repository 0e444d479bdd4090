"""How class paper looks beyond what all sheets share."""

PAPER_STYLE = """
@page { margin: 14mm 10mm 9mm; }
body { font-size: 9.5pt; line-height: 1.3; padding: 0; max-width: none; }
h1 { font-size: 15pt; line-height: 1.2; }
h2 { font-size: 12pt; margin: 3.5mm 0 1mm; }
h3 { font-size: 10pt; margin: 2.5mm 0 1mm; }
ul, ol { margin: 0 0 1.5mm; padding-left: 5.5mm; }
li { margin: 0 0 .6mm; break-inside: avoid; }
p { orphans: 3; widows: 3; }
table { break-inside: avoid; table-layout: auto; }
td, th { padding: .6mm 1.2mm; font-size: 9pt; overflow-wrap: break-word; }
th { font-size: 8.5pt; }
code { font-family: "Liberation Mono", monospace; font-size: 9pt; white-space: nowrap; }
pre { font: 8.5pt/1.25 "Liberation Mono", monospace; margin: 1mm 0; break-inside: avoid;
  white-space: pre-wrap; }
small { font-size: 8.5pt; }
.caution { margin: 1.5mm 0; padding: 1mm 2.5mm; line-height: 1.25; }
.caution p { font-size: 9pt; }
.write { display: inline-block; border-bottom: 1px solid #000; min-width: 30mm; height: 1.2em; }
.box { width: 3.4mm; height: 3.4mm; vertical-align: -.5mm; margin-right: 1mm; }
.drawings { break-inside: avoid; margin: 1mm 0; }
.drawings img { margin: 0 3mm 1mm 0; vertical-align: bottom; }
.whole { break-inside: avoid; }
.at-the-computer { border: 1px dashed #000; padding: .8mm 2mm; }
"""
QUESTION_STYLE = """
body { font-size: 9pt; line-height: 1.25; }
.question { break-inside: avoid; border-top: .5px solid #000; padding: .8mm 0 .3mm 14mm;
  position: relative; }
.question h3 { position: absolute; left: 0; top: .8mm; width: 14mm; margin: 0; line-height: 1.1; }
.question h3 small { display: block; font-weight: normal; }
.asked p { margin: 0 0 .8mm; }
.asked p.words { line-height: 1.15; }
.beside, .row { margin: 0; table-layout: fixed; }
.beside > tbody > tr > td, .row > tbody > tr > td { border: 0; padding: 0; }
.row > tbody > tr > td + td { padding-left: 3mm; }
.beside td + td { padding-left: 3mm; }
.row .beside td { display: block; width: auto !important; padding: 0; }
.row .beside td + td { margin-left: -14mm; }
.options { list-style: none; padding: 0; margin: 0 0 .6mm; }
.options li { padding-left: 3.5mm; text-indent: -3.5mm; margin: 0 0 .3mm; }
.options.boxed li { padding-left: 8mm; text-indent: -8mm; }
.options.short li { display: inline-block; margin-right: 6mm; padding: 0; text-indent: 0; }
.answer .write { min-width: 45mm; height: 5mm; }
.letter { display: inline-block; width: 8mm; height: 6mm; border: 1px solid #000; font-size: 8pt;
  padding: 0 .6mm; margin-right: 1mm; vertical-align: middle; }
.cells { margin: 0 0 .6mm; width: auto; min-width: 60%; }
.cell { min-width: 24mm; height: 6mm; vertical-align: bottom; }
.question th { border-bottom-width: 1px; font-weight: normal; }
.moves td, .job td { height: 7mm; } .job td:first-child { width: 22mm; }
"""

HAND_OUT_STYLE = """
body { font-size: 9pt; line-height: 1.26; }
.shown { margin: 1mm 0; orphans: 1; widows: 1; }
.shown > strong { display: block; break-after: avoid; }
.shown img { margin: 0 .8mm .8mm 0; vertical-align: bottom; }
.shown .piece { display: inline-block; vertical-align: top; break-inside: avoid;
  margin-right: .8mm; }
.shown .column { display: inline-block; vertical-align: top; width: 47mm; margin: 0 .4mm 1mm 0;
  padding-right: 3mm;
  font-size: 8.5pt; line-height: 1.2; }
.shown .column img { display: block; }
.words ul { columns: 3; column-gap: 4mm; list-style: none; padding: 0; margin: 0;
  font-size: 8pt; }
.words li { margin: 0 0 .3mm; line-height: 1.18; }
.rule { border-top: .5px solid #000; margin-top: 2mm; }
"""

KEY_STYLE = """
table { table-layout: fixed; }
td, th { font-size: 8pt; padding: .4mm .6mm; } th:first-child { width: 36mm; }
"""

CARD_STYLE = """
@page { margin: 12mm 8mm 8mm; }
.cards { margin: 0; table-layout: fixed; break-after: page; break-inside: auto; }
.cards:last-child { break-after: auto; }
.cards > tbody > tr > td { border: 1px dashed #000; padding: 2.5mm 3mm; height: 100mm; }
.cards h2, .cards h3 { margin: 0 0 1mm; }
.cards td td, .cards th { font-size: 8.2pt; padding: .2mm 1mm; } .cards td p { margin: 0 0 1mm; }
.cards .caution { font-size: 8.2pt; line-height: 1.2; padding: .6mm 1.6mm; }
.cards .origin { font-size: 8pt; line-height: 1.15; }
.cards sup { font-size: 8pt; line-height: 1; }
.cards li { font-size: 9.5pt; margin: 0 0 1.5mm; }
"""

WORD_STYLE = """
body > ul { columns: 3; column-gap: 5mm; list-style: none; padding: 0; font-size: 8.5pt;
  line-height: 1.2; }
li { margin: 0 0 .7mm; }
"""

AGENDA_STYLE = """
table { break-inside: auto; } section { break-inside: avoid; }
td p { margin: 0 0 .5mm; }
.signed td { height: 8.5mm; }
.lessons table { table-layout: fixed; }
.lessons th:first-child { width: 28mm; }
"""

PERMIT_STYLE = """
body { font-size: 10.5pt; }
.permit { border: 2px solid #000; padding: 6mm 8mm; margin: 0 0 6mm; break-inside: avoid; }
.permit .who { font-size: 13pt; } .permit .sign { margin-top: 12mm; }
.permit .write { min-width: 38mm; }
.talk { break-inside: avoid; } .talk table { break-inside: auto; table-layout: fixed; }
.talk th:first-child { width: 14mm; } .talk th:nth-child(2) { width: 17mm; }
.talk th:nth-child(3) { width: 44mm; }
"""

MEASURE_STYLE = """
table { break-inside: auto; table-layout: fixed; } tbody td { height: 7.5mm; }
th:first-child { width: 15mm; } th:nth-child(2) { width: 42mm; } th:last-child { width: 38mm; }
.fields .write { min-width: 26mm; margin-right: 3mm; }
"""

STRIPS_STYLE = """
table { table-layout: fixed; break-inside: auto; } tr { break-inside: avoid; }
td { border: 1px dashed #000; padding: 3mm 4mm; width: 50%; }
td p { margin: 0; } .word { font-size: 20pt; font-weight: bold; letter-spacing: .1em; }
td small { font-size: 8.5pt; }
"""
