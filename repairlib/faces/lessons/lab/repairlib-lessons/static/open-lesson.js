// A lesson runs by itself when it is opened, and stays at its beginning.
//
// JupyterLab loads a prebuilt extension through two functions, `init` and `get`; this file is
// written by hand, so that there is nothing to build. It only asks for what every JupyterLab has:
// the shell, the notebook in it, and the commands that run all cells and open a file.

const LOOK = `
.rl-lesson .jp-Notebook {--jp-cell-prompt-width: 18px;}
.rl-lesson .jp-InputPrompt, .rl-lesson .jp-OutputPrompt {visibility: hidden;}
.rl-lesson .jp-RenderedMarkdown, .rl-lesson .jp-OutputArea-output {max-width: 64rem;}
.rl-lesson .jp-RenderedHTMLCommon table {margin-left: 0;}
.rl-lesson .jp-OutputArea-output {padding-left: 5px;}
.rl-lesson .jp-Cell-inputWrapper:has(.jp-InputPlaceholder) {height: 0; margin: 0; z-index: 1;
  overflow: visible;}
.rl-lesson .jp-InputPlaceholder {min-height: 0; justify-content: flex-end;}
.rl-lesson .jp-InputPlaceholder .jp-Placeholder-content {flex: none; height: 14px; padding: 0 6px;
  min-height: 0; border: none; background: none; opacity: .7;}
.rl-lesson .jp-InputPlaceholder .jp-PlaceholderText {display: none;}
.rl-lesson .jp-InputPlaceholder .jp-Placeholder-contentContainer::before {content: "code";
  font-size: 11px; color: var(--jp-ui-font-color1);}
.rl-lesson .jp-InputPlaceholder svg {height: 12px;}
`;

// On a phone, or at twice the size, the list of files would leave the lesson a column of syllables.
const NARROW_PX = 1000;

// There, a table of many columns and few rows is turned: each column becomes a line, as high as its
// words.
const COLUMNS = [5, 6, 7, 8, 9, 10, 11];
const turned = (columns) => '.rl-lesson .jp-RenderedMarkdown '
  + `table:has(thead th:nth-child(${columns}):last-child):not(:has(tbody tr:nth-child(4)))`;
const TURNED = COLUMNS.map((columns) => `
${turned(columns)} {display: grid; grid-auto-flow: column; justify-content: start;
  grid-template-rows: repeat(${columns}, auto);}
${turned(columns)} :is(thead, tbody, tr) {display: contents;}
${turned(columns)} :is(th, td) {text-align: left !important;
  border-bottom: 1px solid var(--jp-border-color2);}`);
const NARROW_LOOK = `@media (max-width: 700px) {
.rl-lesson .jp-RenderedHTMLCommon {overflow-wrap: anywhere; padding-right: 4px;}
.rl-lesson .jp-RenderedHTMLCommon code {white-space: normal;}
.rl-lesson .jp-RenderedHTMLCommon :is(td, th) {padding: .4em .3em; overflow-wrap: break-word;}
.rl-lesson .jp-OutputArea-output td code {overflow-wrap: anywhere;}
${TURNED.join('')}
}`;

// On a phone the whole width is the lesson's, and the list of files is in the menu View. (A width of
// 0 would count as none given.)
const PHONE_LOOK = `@media (max-width: 500px) {
.jp-SideBar.lm-TabBar[data-orientation='vertical'] {min-width: 1px; max-width: 1px; visibility: hidden;}
#jp-main-dock-panel {padding: 0;}
.rl-lesson .jp-Notebook {--jp-cell-prompt-width: 6px; --jp-notebook-padding: 4px;}
}`;

const opened = new WeakSet();

const isLesson = (notebook) => Boolean(notebook?.context?.model?.sharedModel?.getMetadata?.('repairlib'));

async function openLesson(app, panel) {
  if (!panel?.context || !panel.sessionContext || opened.has(panel)) return;
  opened.add(panel);
  await panel.context.ready;
  if (!isLesson(panel)) return;
  panel.node.classList.add('rl-lesson');
  if (window.innerWidth < NARROW_PX) app.shell.collapseLeft?.();
  await panel.sessionContext.ready;
  if (!panel.sessionContext.session?.kernel) return;
  stayAtTop(panel);
  if (app.shell.currentWidget !== panel) return;
  await app.commands.execute('notebook:run-all-cells');
  foldSheets(panel);
}

// The sheet that is printed for those who mark would stand, as it was at first, under the live one.
function foldSheets(panel) {
  const tags = (cell) => cell.model.getMetadata('tags') ?? [];
  for (const cell of panel.content.widgets) {
    if (tags(cell).includes('grading')) cell.outputHidden = true;
  }
}

// Running all cells scrolls to the last one. Until the learner scrolls, types or clicks, put it back.
function stayAtTop(panel) {
  const page = panel.content.node;
  const learner = ['wheel', 'pointerdown', 'keydown', 'touchstart'];
  const toTop = () => {
    for (const one of [page, ...page.querySelectorAll('.jp-WindowedPanel-outer')]) one.scrollTop = 0;
  };
  const timer = setInterval(toTop, 50);
  const stop = () => {
    clearInterval(timer);
    learner.forEach((kind) => page.removeEventListener(kind, stop, true));
  };
  learner.forEach((kind) => page.addEventListener(kind, stop, true));
  setTimeout(stop, 60000);
}

// A link to another lesson in a panel opens it in a tab of this page, which stays as it is.
function openLinks(app) {
  document.addEventListener('click', (event) => {
    const link = event.target.closest?.('.rl-panel a[href$=".ipynb"]');
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    const here = app.shell.currentWidget?.context?.path ?? '';
    const path = here.slice(0, here.lastIndexOf('/') + 1) + link.getAttribute('href');
    app.commands.execute('docmanager:open', { path });
  });
}

const plugin = {
  id: 'repairlib-lessons:open',
  autoStart: true,
  activate: (app) => {
    const look = () => openLesson(app, app.shell.currentWidget);
    const textContent = LOOK + NARROW_LOOK + PHONE_LOOK;
    document.head.append(Object.assign(document.createElement('style'), { textContent }));
    openLinks(app);
    app.restored.then(() => {
      look();
      app.shell.currentChanged?.connect(look);
    });
  },
};

window._JUPYTERLAB = window._JUPYTERLAB || {};
window._JUPYTERLAB['repairlib-lessons'] = {
  init: () => {},
  get: async () => () => ({ __esModule: true, default: plugin }),
};
