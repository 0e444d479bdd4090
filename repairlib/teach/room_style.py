"""How the room view looks: dense on a screen, in strips on a telephone, whole on paper."""

STYLE = """
:root { color-scheme: light dark; --ink: #111; --ground: #fff; --soft: #555; --line: #999;
  --pale: #eee; --strong: #111; --on-strong: #fff; }
@media screen and (prefers-color-scheme: dark) { :root { --ink: #eee; --ground: #16181a;
  --soft: #bbb; --line: #777; --pale: #2a2d30; --strong: #f4f4f4; --on-strong: #111; } }
* { box-sizing: border-box; }
body { font: 14px/1.3 "Liberation Sans", Arial, Helvetica, sans-serif; margin: 0; padding: 6px 8px;
  color: var(--ink); background: var(--ground); }
a { color: inherit; }
h1 { font-size: 20px; margin: 0; } h2 { font-size: 16px; margin: 0 0 3px; }
h2 a { font-size: 14px; font-weight: normal; margin-left: 1em; }
h3 { font-size: 15px; margin: 6px 0 0; }
header { display: flex; flex-wrap: wrap; gap: 0 22px; align-items: baseline; }
header p, header nav { margin: 0; } nav a { margin-right: 10px; }
.old { background: var(--strong); color: var(--on-strong); padding: 0 5px; font-weight: bold; }
.tops { display: grid; grid-template-columns: 1fr 1fr; gap: 8px; margin: 5px 0; }
.panel { border: 2px solid var(--ink); padding: 4px 8px; min-width: 0; }
.panel ul, .panel ol { margin: 0; padding-left: 20px; } .panel p { margin: 0; }
.panel li { margin-bottom: 2px; } .panel li a { text-decoration: none; }
.panel small { font-size: 13px; display: -webkit-box; -webkit-line-clamp: 2; line-clamp: 2;
  -webkit-box-orient: vertical; overflow: hidden; }
.panel ol small { -webkit-line-clamp: 1; line-clamp: 1; }
.open { background: var(--strong); color: var(--on-strong); padding: 0 4px; }
table { border-collapse: collapse; width: 100%; }
th, td { border: 1px solid var(--line); padding: 0 2px; text-align: center; }
th { font-weight: bold; }
th[scope=row] { text-align: left; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
i { font-style: normal; }
.grid, .by-lesson { table-layout: fixed; } .name { width: 112px; } .getting { width: 148px; }
.by-lesson thead th { position: sticky; top: 0; background: var(--ground); z-index: 1; }
.grid thead th { overflow: hidden; white-space: nowrap; font-size: 13px; line-height: 15px;
  padding: 0; text-overflow: ellipsis; }
.grid thead tr + tr th { letter-spacing: -1px; text-overflow: clip; }
.grid td { height: 24px; padding: 0; font-size: 15px; line-height: 1; white-space: nowrap; }
.grid tfoot td, .grid tfoot th { font-size: 12px; letter-spacing: -.5px; height: 20px; }
.grid tfoot td { overflow: hidden; } .grid tfoot .all { letter-spacing: -1.5px; font-size: 10px; }
.b { border-left: 3px solid var(--ink); }
.where { text-align: left; font-size: 13px !important; padding: 0 3px !important;
  overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
.stuck { background: var(--strong); color: var(--on-strong); font-weight: bold; }
.quiet { font-weight: bold; border: 2px dashed var(--ink); }
.w, .p, .q { font-weight: bold; background: var(--pale); }
.w { outline: 2px solid var(--ink); outline-offset: -2px; }
.u, .held { background: var(--strong); color: var(--on-strong); font-weight: bold; }
.n { color: var(--soft); font-size: 12px !important; }
.was { border-bottom: 4px double var(--ink); }
.hard { background: var(--strong) !important; color: var(--on-strong); font-weight: bold; }
.legend { margin: 4px 0; font-size: 13px; }
.legend span { margin-right: 11px; white-space: nowrap; }
.legend i { padding: 0 3px; } .private { font-size: 13px; border-top: 1px solid var(--line);
  margin: 6px 0 0; padding-top: 4px; }
.by-lesson th small { display: block; font-weight: normal; font-size: 12px; line-height: 1.1; }
.by-lesson td { height: 22px; } .by-lesson td i { white-space: nowrap; padding: 0 1px; }
.hards td { font-size: 13px; } .hards b { background: var(--strong); color: var(--on-strong);
  padding: 0 3px; white-space: nowrap; }
.narrow { display: none; }
.more { display: none; border-top: 3px solid var(--ink); padding-top: 6px; margin-top: 12px; }
.more:target { display: block; }
.more ul { margin: 0; padding-left: 20px; }
.words { margin-bottom: 8px; } .words .say { font-size: 12px; margin-left: 3px; }
.words .r .say, .words .n .say { display: none; } .words .was .say { display: inline; }
.questions td, .practise td, .moved td { text-align: left; padding: 2px 5px; vertical-align: top; }
.questions td:first-child { width: 38%; }
.questions td:nth-child(2), .questions td:nth-child(3) { white-space: nowrap; }
@media screen and (max-width: 1000px) {
  .whole { display: none; } .narrow { display: block; }
}
@media screen and (max-width: 700px) {
  body { font-size: 16px; }
  .tops { grid-template-columns: 1fr; }
  .panel small, .private, .legend, .where, .hards td { font-size: 14px !important; }
  .by-lesson, .questions, .practise, .moved, tbody:not(.words *), tr:not(.words *),
  td:not(.words *), th:not(.words *) {
    display: block; width: auto !important; text-align: left; border: 0; }
  .by-lesson thead, .by-lesson thead tr { display: block; border: 0; }
  .by-lesson thead th { display: inline-block; position: static; border: 0; padding: 8px 10px; }
  .by-lesson thead th small, .by-lesson thead th:nth-child(-n+2) { display: none; }
  .questions thead, .practise thead, .moved thead { display: none; }
  .by-lesson tr, .questions tr, .practise tr, .moved tr { border-bottom: 2px solid var(--ink);
    padding: 3px 0; }
  .by-lesson td { display: inline-block; height: auto; margin: 0 8px 2px 0; }
  .by-lesson td.n { display: none; } .by-lesson td.where { display: block; }
  .by-lesson td[data-label]::before, .questions td[data-label]::before {
    content: attr(data-label) ": "; font-weight: bold; }
  .hards td:empty, .questions td:empty { display: none; }
  .words { table-layout: fixed; } .words th { font-size: 14px; padding: 0; }
  .words th:first-child { width: 92px; } .words .hard { letter-spacing: -1px; }
  .words .say { display: none !important; } .words td { padding: 4px 0; }
}
@page { size: A4 landscape; margin: 12mm 10mm 11mm;
  @top-left { content: "Room view. For the instructor alone."; font: 8.5pt sans-serif; }
  @top-right { content: "page " counter(page) " of " counter(pages); font: 8.5pt sans-serif; } }
@media print {
  * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  body { padding: 0; font-size: 9pt; } h1 { font-size: 14pt; } h2 { font-size: 11pt; }
  nav, h2 a, script, #age, .more.idle { display: none; }
  .more { display: block; font-size: 8pt; } .more.lesson { break-before: page; }
  .more td, .more .say { padding: 0 1mm; font-size: 8pt; line-height: 1.2; }
  tr, li, .panel, .legend { break-inside: avoid; } h2, h3 { break-after: avoid; }
  thead { display: table-header-group; } tfoot { display: table-row-group; }
  .panel small { font-size: 8.5pt; -webkit-line-clamp: 3; line-clamp: 3; }
  .name { width: 27mm; } .getting { width: 31mm; } .by-lesson thead th { position: static; }
  .grid td { height: 6mm; font-size: 9.5pt; } .grid thead th { font-size: 8pt; }
  .grid tfoot td { font-size: 7pt; }
  .where { font-size: 8pt !important; } .legend, .private { font-size: 8.5pt; }
  .by-lesson td { height: 5mm; } .by-lesson th small { font-size: 7.5pt; }
}
"""
