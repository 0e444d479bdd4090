"""How the bench sheet looks beyond what all sheets share: its boxes in a row, map and columns."""

BENCH_STYLE = """
:root { color-scheme: light; }
h1 { line-height: 1.2; }
.write { display: inline-block; border-bottom: 1px solid #000; min-width: 9mm; height: 1em; }
.fields .write, .fields span { width: 36mm; margin-right: 5mm; }
h1 .write { width: 80mm; }
.caution { font-size: 8.5pt; line-height: 1.25; padding: 1mm 2.5mm; margin: 1.2mm 0; }
.stays { break-after: avoid; }
.list { font-size: 9pt; } .list .write { width: 40mm; }
.caution .write { width: 42mm; }
.steps { display: grid; grid-template-columns: 28fr 33fr 36fr 42fr 40fr; gap: 1.5mm;
  margin: 1.5mm 0; padding: 0; list-style: none; counter-reset: step; break-inside: avoid; }
.steps li { counter-increment: step; border: 1px solid #000; padding: 1mm 1.5mm; }
.steps li::before { content: counter(step) ". "; font-weight: bold; }
.steps b { white-space: nowrap; font-size: 9pt; }
.steps small { display: block; font-size: 8.5pt; line-height: 1.25; }
.steps .write { min-width: 11mm; }
.maps { display: flex; flex-wrap: wrap; gap: 1mm 4mm; }
.side, .field { margin: 0; flex: 1 1 100%; break-inside: avoid; }
.upright, .field { flex: 1 1 40%; }
figcaption { font-size: 9pt; font-weight: bold; }
.signs { font-size: 8pt; line-height: 1.25; }
.drawn { display: block; width: 100%; height: auto; max-height: 59mm; }
.upright .drawn { max-height: 118mm; }
.field svg { display: block; width: 100%; }
.strips { display: none; }
tr:has(.across) { break-after: avoid; }
.stop { display: inline-block; min-width: 5.5mm; border: 1.4px solid #000; border-radius: 3mm;
  padding: 0 1mm; text-align: center; }
.ref { width: 18mm; } td.ref { font-weight: normal; }
.old { width: 28mm; } .new { width: auto; } .plus { width: 42mm; }
td { font-size: 9pt; } td small { line-height: 1.2; }
.stacks .source { font-size: 8.5pt; }
.tick { width: 23mm; text-align: left; } .got { width: 14mm; }
.ticked { display: block; white-space: nowrap; font-size: 8.5pt; padding-bottom: .6mm; }
.ticked .box, .steps .box, .across .box { vertical-align: -.6mm; margin-right: .6mm; }
@page { margin: 13mm 12mm 11mm; }
@media print { body { padding: 0; } h2 { margin-top: 3.5mm; } }
@media screen {
  body { max-width: 984px; padding: 12px; }
  th, td small, .stacks .source, .caution, .steps small, .signs, .ticked { font-size: 13px; }
  .drawn, .upright .drawn { max-height: none; width: auto; max-width: 100%; }
  .upright { flex-basis: 100%; }
  .new-page { border-top: 3px solid #000; margin-top: 10mm; }
}
@media screen and (max-width: 1008px) {
  .whole { display: none; }
  .strips { display: flex; flex-wrap: wrap; gap: 10px 20px; }
  .strips p { flex: 1 0 100%; margin: 0; }
  .strips svg { max-width: 100%; height: auto; outline: 1px solid #000; }
}
@media screen and (max-width: 700px) {
  .steps { grid-template-columns: 1fr; }
  td, .list { font-size: 16px; }
  .steps b { font-size: 16px; }
  .steps small, .ticked, td.plus, .caution, .signs, figcaption, .strips p,
  .stacks .source, .rules small { font-size: 14px; }
  .fields .write { display: block; width: 100%; height: 1.6em; }
  h1 .write, .caution .write { width: 60%; }
  .upright, .field { flex-basis: 100%; }
  .stacks .across { padding-left: 0; }
  .ticked { display: inline-block; margin-right: 1em; }
}
"""
