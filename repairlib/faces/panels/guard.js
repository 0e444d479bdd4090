// Keys typed in a panel stay in it, and every control in it has a name.

// The notebook listens for single letters: d d deletes a cell, also while a list is being chosen
// from. What is stopped at the panel never gets there. Saving by Ctrl-S still works.
const stay = (event) => {
  const saving = (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 's';
  if (!saving) event.stopPropagation();
};

const CONTROLS = 'input, select, textarea, button, [role="slider"], [contenteditable="true"]';

// A slider's handle and its number do not know the words beside them.
const nameControls = (panel) => {
  for (const control of panel.querySelectorAll(CONTROLS)) {
    const named = control.getAttribute('aria-label') || control.title || control.labels?.length;
    if (named || control.textContent.trim() && control.matches('button')) continue;
    const label = control.closest('.jupyter-widgets')?.querySelector('.widget-label');
    if (label?.textContent.trim()) control.setAttribute('aria-label', label.textContent.trim());
  }
};

const watch = (panel) => {
  panel.addEventListener('keydown', stay);
  nameControls(panel);
  const observer = new MutationObserver(() => nameControls(panel));
  observer.observe(panel, { childList: true, subtree: true });
  return () => {
    panel.removeEventListener('keydown', stay);
    observer.disconnect();
  };
};

export default {
  render({ el }) {
    el.style.display = 'none';
    let done = () => {};
    const whenThere = () => {
      const panel = el.closest('.rl-panel');
      if (panel) done = watch(panel);
      else waiting = requestAnimationFrame(whenThere);
    };
    let waiting = requestAnimationFrame(whenThere);
    return () => {
      cancelAnimationFrame(waiting);
      done();
    };
  },
};
