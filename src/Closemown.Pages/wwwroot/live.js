// Shows what has changed in the book, whoever wrote it, without a hand on the page.
const againMs = 15000;
let source;
let behind = false;
let running;

export function watch() {
  // A copy out of reach is brought up to date when it is opened again.
  if (!document.querySelector('main')?.dataset.seq) return;
  document.addEventListener('visibilitychange', () => document.hidden ? stop() : start());
  addEventListener('pagehide', stop);
  addEventListener('pageshow', e => e.persisted && start());
  if (!document.hidden) start();
}

// A page that nobody looks at holds no line open: a browser has few of them for one server.
function stop() {
  source?.close();
  source = null;
}

function start() {
  if (source) return;
  source = new EventSource(`/events?seen=${document.querySelector('main').dataset.seq}`);
  source.addEventListener('changed', changed);
  source.addEventListener('open', () => document.body.dataset.asOf && !isBusy() && refresh());
  source.addEventListener('error', () => {
    // What was refused, unlike what broke off, a browser does not try again.
    if (source?.readyState !== EventSource.CLOSED) return;
    stop();
    setTimeout(() => document.hidden || start(), againMs);
  });
}

function changed() {
  if (document.querySelector('main form[data-sending]')) setTimeout(changed, 300);
  else if (isBusy()) offer();
  else refresh();
}

/** Whether something in the page would be disturbed: typed and not sent, or a timer that runs. */
function isBusy() {
  const main = document.querySelector('main');
  return main.querySelector('[data-busy]') !== null || typed(main).length > 0;
}

/** Controls that say something else than when the page came. */
function typed(main) {
  return [...main.querySelectorAll('input:not([type=hidden]), textarea, select')].filter(c =>
    c.type === 'checkbox' || c.type === 'radio' ? c.checked !== c.defaultChecked
      : c instanceof HTMLSelectElement ? [...c.options].some((o, i) => o.selected !== (o.defaultSelected || (i === 0 && !c.multiple && ![...c.options].some(x => x.defaultSelected))))
        : c.value !== c.defaultValue);
}

function offer() {
  if (behind) return;
  behind = true;
  const bar = document.createElement('div');
  bar.className = 'bar';
  bar.dataset.changed = '';
  bar.setAttribute('role', 'status');
  const button = Object.assign(document.createElement('button'), { type: 'button', className: 'alt small', textContent: 'The book has changed: show' });
  button.addEventListener('click', refresh);
  bar.append(button);
  document.querySelector('main').before(bar);
}

/** One after the other: the last change is always seen. */
function refresh() {
  running = (running ?? Promise.resolve()).then(swap);
  return running;
}

async function swap() {
  let page;
  try {
    const answer = await fetch(location.href, { headers: { Accept: 'text/html' }, cache: 'no-store' });
    if (!answer.ok || answer.redirected) return;
    page = new DOMParser().parseFromString(await answer.text(), 'text/html');
  } catch {
    return;                                   // the next change, or the next look, tries again
  }
  const [old, main] = [document.querySelector('main'), page.querySelector('main')];
  if (!main) return;
  document.querySelectorAll('[data-changed], [data-copy]').forEach(bar => bar.remove());
  delete document.body.dataset.asOf;
  behind = false;
  const [x, y] = [scrollX, scrollY];
  const focused = old.contains(document.activeElement) ? key(old, document.activeElement) : null;
  const unfolded = new Set([...old.querySelectorAll('details[open]')].map(d => key(old, d)));
  const values = typed(old).map(c => [key(old, c), c]);
  document.adoptNode(main);
  for (const d of main.querySelectorAll('details')) d.open ||= unfolded.has(key(main, d));
  for (const [k, c] of values) {
    const now = [...main.querySelectorAll(c.tagName)].find(n => key(main, n) === k);
    if (now && (c.type === 'checkbox' || c.type === 'radio')) now.checked = c.checked;
    else if (now) now.value = c.value;
  }
  old.replaceWith(main);
  scrollTo({ left: x, top: y, behavior: 'instant' });
  if (focused) [...main.querySelectorAll('a, button, input, select, textarea, summary, [tabindex]')].find(n => key(main, n) === focused)?.focus({ preventScroll: true });
}

/** What an element is known by in the page before and after: its id, else what it is, and which of those alike. */
function key(main, element) {
  if (element.id) return '#' + element.id;
  const like = e => [e.tagName, e.getAttribute('name'), e.getAttribute('href'), e.getAttribute('value'), e.tagName === 'DETAILS' ? e.querySelector('summary')?.textContent.trim() : ''].join('|');
  const mine = like(element);
  return `${mine}|${[...main.querySelectorAll(element.tagName)].filter(e => like(e) === mine).indexOf(element)}`;
}
