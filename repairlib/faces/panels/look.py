"""The look shared by all panels: one style sheet, and a widget that holds HTML.

Colours and fonts are those of the notebook's theme, so a panel sits well in light and dark.
Nothing is told by colour alone: every state has a sign and words.
"""

from __future__ import annotations

import ipywidgets as widgets

from repairlib.core.html import told
from repairlib.faces.panels.guard import Guard

STYLE = """<style>
.rl-panel {font-family: var(--jp-content-font-family, sans-serif); max-width: 64rem;
  font-size: var(--jp-content-font-size1, 14px); color: var(--jp-content-font-color1, #222);
  padding: 0 4px 8px 2px;}
.rl-panel.widget-box, .rl-panel .widget-box, .rl-panel .widget-html {overflow: visible;}
.rl-panel .widget-html {height: auto; margin: 2px 0;}
.rl-panel .widget-html-content {line-height: 1.5; white-space: normal; height: auto;
  font-size: var(--jp-content-font-size1, 14px); color: var(--jp-content-font-color1, #222);}
.rl-panel .widget-html-content p {margin: 0 0 .5em 0;}
.rl-panel .widget-html-content code {background: var(--jp-layout-color2, #eee); padding: 0 .3em;
  border-radius: 3px; font-family: var(--jp-code-font-family, monospace);}
.rl-panel .widget-html-content ul {margin: .2em 0 .2em 1.3em; padding: 0;}
.rl-panel input:focus-visible, .rl-panel select:focus-visible, .rl-panel button:focus-visible
  {outline: 2px solid var(--jp-brand-color1, #1976d2); outline-offset: 1px;}
.rl-panel input[type="text"], .rl-panel select {font-size: var(--jp-content-font-size1, 14px);}
.rl-card {border: 1px solid var(--jp-border-color2, #ccc); border-radius: 6px;
  padding: 10px 12px 8px 12px; margin: 0 0 12px 0; background: var(--jp-layout-color1, #fff);}
/* Questions side by side where there is room; what is wide has the room of two, or of all. */
.rl-panel:has(> .rl-card), .rl-panel .widget-vbox:has(> .rl-card) {display: grid; gap: 12px;
  grid-template-columns: repeat(auto-fit, minmax(min(20rem, 100%), 1fr)); align-items: stretch;
  container: cards / inline-size;}
.rl-panel:has(> .rl-card) > :not(.rl-card), .rl-card.rl-full {grid-column: 1 / -1;}
.rl-panel .rl-card {margin: 0; box-sizing: border-box;}
.rl-card .rl-picture {padding: 0; margin: 4px -12px; max-width: calc(100% + 24px);}
@container cards (min-width: 42rem) {.rl-card.rl-broad {grid-column: span 2;}}
/* What is chosen and what comes of it, side by side where there is room. */
@media (min-width: 1000px) {
.rl-panel:has(> .rl-beside) {display: grid; column-gap: 24px; align-items: start;
  grid-template-columns: minmax(22rem, 26rem) minmax(20rem, 1fr);}
.rl-panel:has(> .rl-beside) > * {grid-column: 1;}
.rl-panel > .rl-beside {grid-column: 2; grid-row: 2 / span 30;
  min-height: 0;}
.rl-panel:has(> .rl-beside) > .rl-below {grid-column: 1 / -1;}
}
.rl-head {font-weight: 600;}
.rl-panel h4 {font-size: var(--jp-content-font-size1, 14px); font-weight: 600; margin: 0 0 .3em 0;}
.rl-panel h4 .rl-soft {font-weight: 400;}
.rl-soft {color: var(--jp-content-font-color2, #555);}
.rl-picture {display: inline-block; background: #fff; border-radius: 4px; padding: 6px;
  margin: 4px 0; max-width: 100%; box-sizing: border-box;}
.rl-told {border-left: 4px solid var(--jp-border-color2, #bbb); padding: 1px 0 1px 10px;
  margin-top: 4px;}
.rl-told > strong {font-size: 1.15em;}
.rl-right {border-left-color: var(--jp-success-color1, #388e3c);}
.rl-wrong, .rl-partly-right {border-left-color: var(--jp-warn-color1, #f57c00);}
.rl-unsafe {border: 2px solid var(--jp-error-color1, #d32f2f); border-left-width: 10px;
  border-radius: 4px; padding: 6px 12px;}
.rl-receipt {font: 600 2.4em/1.3 var(--jp-code-font-family, monospace); letter-spacing: .06em;}
.rl-unsafe > div[role="note"] {border: none !important; padding: 6px 0 0 0 !important;}
.rl-panel progress {width: 9rem; vertical-align: middle; margin-right: .6em;}
.rl-panel .widget-radio {width: auto; height: auto;}
.rl-panel .widget-radio-box {width: auto; height: auto; margin: 0;}
.rl-panel .widget-radio-box label {height: auto; white-space: normal; line-height: 1.4;
  padding: 3px 0; overflow: visible; display: flex; align-items: baseline;
  font-size: var(--jp-content-font-size1, 14px); width: auto;}
.rl-panel .widget-radio-box input {margin: 0 .6em 0 2px; flex: none; order: -1;
  height: auto; position: relative; top: 2px;}
.rl-panel .jupyter-widget-Collapse-header {color: var(--jp-content-font-color1, #222);}
.rl-panel .widget-label {font-size: var(--jp-content-font-size1, 14px);}
.rl-named > .widget-label {position: absolute; width: 1px; height: 1px; overflow: hidden;
  clip-path: inset(50%); margin: 0; padding: 0;}
.rl-panel .widget-html, .rl-panel .widget-html-content {min-width: 0; max-width: 100%;}
.rl-panel .widget-text, .rl-panel .widget-dropdown {max-width: calc(100% - 4px);}
.rl-sheet {overflow-x: auto;}
.rl-sheet table {border-collapse: collapse; margin: 6px 0 10px 0;}
.rl-sheet th, .rl-sheet td {border-bottom: 1px solid var(--jp-border-color2, #ccc);
  text-align: left; vertical-align: top; padding: 3px 16px 3px 0;}
.rl-panel .rl-record td:not(:nth-child(3)) {white-space: normal;}
.rl-sheet tbody th {font-weight: 600;} .rl-sheet td:nth-child(-n+3) {white-space: nowrap;}
@media (max-width: 700px) {
  .rl-sheet thead {display: none;} .rl-sheet tr {display: block; padding: 2px 0;
    border-bottom: 1px solid var(--jp-border-color2, #ccc);}
  .rl-sheet th, .rl-sheet td {display: inline-block; border: none; padding: 0 10px 0 0;}
}
/* On a phone, a long name stands over its field. */
@media (max-width: 700px) {
  .rl-panel .rl-stacked {flex-direction: column; align-items: stretch; height: auto;}
  .rl-panel .rl-stacked > .widget-label {width: auto !important; text-align: left;}
  .rl-panel .rl-stacked > :not(.widget-label) {flex: none; min-height: 28px;}
}
/* On a phone, a table of many columns becomes a list of rows, and a table of boxes a form. */
.rl-narrow {display: none;}
@media (max-width: 700px) {
  .rl-panel table:has(th[scope="col"]:nth-child(4)) thead {display: none;}
  .rl-panel table:has(th[scope="col"]:nth-child(4)) tr {display: block; padding: 4px 0;
    border-bottom: 1px solid var(--jp-border-color2, #ccc);}
  .rl-panel table:has(th[scope="col"]:nth-child(4)) td {display: inline-block;
    padding: 0 10px 0 0 !important;}
  .rl-panel th, .rl-panel td {padding-right: 6px !important; overflow-wrap: anywhere;}
  .rl-panel th {overflow-wrap: break-word; max-width: 45vw;}  /* no short title breaks in a word */
  .rl-panel code {overflow-wrap: anywhere; white-space: normal;}
  .rl-panel .rl-grid {display: block;}
  .rl-grid > .rl-wide {display: none;} .rl-grid > .rl-narrow {display: block;}
  .rl-panel .rl-grid > .widget-text, .rl-panel .rl-grid > .widget-dropdown {width: 100%;}
}
.rl-panel .widget-html-content a {text-decoration: underline;
  color: var(--jp-content-link-color, #1565c0);}
.rl-steps .widget-html {margin-left: 10px;}
.rl-panel .rl-grid {gap: 4px 8px; align-items: center; overflow-x: auto;}
</style>"""


class Panel(widgets.VBox):
    """The children one under the other, in the common look; no key typed there leaves it."""

    children: tuple[widgets.Widget, ...]

    def __init__(self, *children: widgets.Widget):
        super().__init__([widgets.VBox([words(STYLE), Guard()]), *children])
        self.add_class("rl-panel")


def named(control: widgets.DOMWidget, name: str) -> widgets.DOMWidget:
    """The control with a name that is read aloud and not seen, where the page shows it already."""
    control.description = name
    control.add_class("rl-named")
    return control


def enter_presses(field: widgets.Text, button: widgets.Button) -> None:
    """Let the key Enter, in a field, press a button."""

    def press(_field, content, _buffers):
        if content.get("event") == "submit":
            button.click()

    field.on_msg(press)


def words(html: str = "") -> widgets.HTML:
    """A piece of HTML that can change. Callbacks write here; they never print."""
    return widgets.HTML(html)


def trouble(error: Exception) -> str:
    """What could not be done, at the place where it was tried."""
    return told("cannot read", "Not done", [str(error)])
