// Entries that could not be sent wait on this device, in their order, until the machine is in reach. Their ids make each of them one entry, however often it is sent.
import { send, freshToken } from './sending.js';

const everyMs = 15000;
const unpaired = 'This device is not paired any more.';
let flushing = false;
let timer = 0;
let trouble = '';
let shown = '';

/** Keeps an entry. */
export async function keep(body, words) {
  body.delete('form');
  // Asked for once it is needed: a browser short of room then throws away others' things first.
  navigator.storage?.persist?.().catch(() => { });
  await change(s => s.add({ id: body.get('id'), body: body.toString(), words }));
  await show();
}

/** What was entered another way waits no longer. */
export async function settled(id) {
  const same = (await all()).filter(w => w.id === id);
  for (const w of same) await change(s => s.delete(w.n));
  if (same.length) await show();
}

/** Sends what waits, the oldest first. */
export async function flush() {
  if (flushing) return;
  flushing = true;
  try {
    const waiting = (await all()).filter(w => !w.fault);
    if (waiting.length === 0) return;
    const token = await freshToken();
    trouble = token === '' ? unpaired : '';
    if (!token) return;
    for (const w of waiting) {
      const body = new URLSearchParams(w.body);
      body.set('form', token);
      const answer = await send(body);
      if (!answer || ['too-fast', 'not-paired', 'form'].includes(answer.error?.code)) return;
      // A refusal is told and the entry stays: nobody's reading is thrown away unseen.
      await change(s => answer.ok ? s.delete(w.n) : s.put({ ...w, fault: `${answer.error.message} ${answer.error.remedy}` }));
    }
  } finally {
    flushing = false;
    await show();
  }
}

/** Shows what waits, above the page. */
export async function show() {
  const waiting = await all();
  clearTimeout(timer);
  if (waiting.some(w => !w.fault)) timer = setTimeout(flush, everyMs);
  const now = JSON.stringify([waiting, trouble]);
  // What a finger is about to press stays where it is.
  if (now === shown) return;
  shown = now;
  document.querySelector('[data-waiting]')?.remove();
  if (waiting.length === 0) return;
  const bar = make('aside', { className: 'bar' });
  bar.dataset.waiting = '';
  bar.setAttribute('aria-label', 'Waiting entries');
  const one = waiting.length === 1;
  bar.append(
    make('p', { textContent: `${waiting.length} ${one ? 'entry waits' : 'entries wait'} on this device; ${one ? 'it is' : 'they are'} sent when the machine is in reach.`, role: 'status' }),
    ...(trouble ? [make('p', { className: 'fault', textContent: trouble })] : []),
    ...(trouble === unpaired ? [make('a', { href: '/pair', className: 'row', textContent: 'Pair this device' })] : []));
  const list = make('ul', {});
  list.append(...waiting.map(row));
  bar.append(list);
  document.querySelector('main')?.before(bar);
}

addEventListener('online', flush);

function row(w) {
  const li = make('li', {});
  li.append(make('p', { textContent: w.words }));
  if (w.fault) li.append(make('p', { className: 'fault', textContent: w.fault }), press('Mend it', () => mend(w)));
  const drop = press('Drop it', () => drop.replaceWith(
    make('span', { textContent: 'It is then gone for good. ' }),
    press('Yes, drop it', async () => { await change(s => s.delete(w.n)); await show(); }),
    press('Keep it', async () => { shown = ''; await show(); })));
  li.append(drop);
  return li;
}

/** Shows a refused entry on the page for mending, as without script. */
async function mend(w) {
  const token = await freshToken();
  if (!token) {
    trouble = token === '' ? unpaired : 'The machine is out of reach: mend it when it is back.';
    await show();
    return;
  }
  const form = make('form', { method: 'post', action: '/enter', hidden: true });
  const body = new URLSearchParams(w.body);
  body.set('form', token);
  for (const [name, value] of body) form.append(make('input', { type: 'hidden', name, value }));
  document.body.append(form);
  form.submit();
}

function press(text, act) {
  const button = make('button', { type: 'button', className: 'alt small', textContent: text });
  button.addEventListener('click', act);
  return button;
}

function make(tag, properties) {
  return Object.assign(document.createElement(tag), properties);
}

// IndexedDB, which plain http has too. Opened for each use: a page that is left holds nothing open.
function open() {
  return new Promise((done, fail) => {
    const request = indexedDB.open('closemown', 1);
    request.onupgradeneeded = () => request.result.createObjectStore('waiting', { keyPath: 'n', autoIncrement: true });
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error);
  });
}

async function use(mode, work) {
  const db = await open();
  try {
    return await new Promise((done, fail) => {
      const transaction = db.transaction('waiting', mode, { durability: 'strict' });
      const request = work(transaction.objectStore('waiting'));
      transaction.oncomplete = () => done(request.result);
      transaction.onabort = () => fail(transaction.error);
    });
  } finally {
    db.close();
  }
}

const change = work => use('readwrite', work);

/** A browser that keeps nothing, as in a private window, has nothing waiting. */
async function all() {
  try {
    return await use('readonly', s => s.getAll());
  } catch {
    return [];
  }
}
