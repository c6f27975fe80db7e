// Sends the forms of entries without leaving the page where they are refused, and keeps them where the server is out of reach.
import { send, freshToken, newId, localTime } from './sending.js';
import { keep, settled } from './waiting.js';

const unseen = new Set(['form', 'kind', 'back', 'id', 'at', 'unit', 'area', 'voids', 'confirm', 'instead']);

/** Takes over all forms of entries, also those that come later. */
export function listen() {
  document.addEventListener('submit', e => {
    if (!e.target.matches('form[data-entry]')) return;
    e.preventDefault();
    submit(e.target, e.submitter);
  });
  // What was typed anew is another entry: never the one that may have arrived.
  document.addEventListener('input', e => e.target.form?.matches('[data-entry]') && delete e.target.form.dataset.id);
}

async function submit(form, button) {
  if (form.dataset.sending !== undefined) return;
  form.dataset.sending = '';
  const pressed = button ?? form.querySelector('button:not([name])');
  const said = pressed?.textContent;
  const body = bodyOf(form, button);
  const sent = typedIn(form);
  if (pressed) {
    pressed.setAttribute('aria-disabled', 'true');
    pressed.textContent = 'Sending…';
  }
  clear(form);
  let leaves = false;
  try {
    let answer = await send(body);
    if (answer?.error?.code === 'form') {
      const token = await freshToken();
      if (token) body.set('form', token);
      answer = token ? await send(body) : token === null ? null : answer;
    }
    if (!answer) {
      await keep(body, wordsOf(form, body));
      empty(form, sent);
    } else if (answer.ok) {
      await settled(body.get('id'));
      leaves = await written(form, sent, answer);
    } else {
      faults(form, answer.errors ?? [answer.error]);
    }
  } catch (e) {
    faults(form, [{ field: '', message: 'It could not be sent, nor kept on this device.', remedy: `Try again. (${e.message})` }]);
  } finally {
    // Until the next page is there a second touch must find nothing to send.
    if (!leaves) {
      delete form.dataset.sending;
      if (pressed) {
        pressed.removeAttribute('aria-disabled');
        pressed.textContent = said;
      }
    }
  }
}

function bodyOf(form, button) {
  const body = new URLSearchParams();
  for (const [name, value] of new FormData(form, button?.name ? button : undefined)) {
    if (typeof value === 'string' && value.trim() !== '') body.append(name, value);
  }
  // The same try keeps its id and time: however often it arrives it is one entry.
  form.dataset.id ??= body.get('id') ?? newId();
  body.set('id', form.dataset.id);
  if (!body.has('at')) body.set('at', localTime());
  return body;
}

function typedIn(form) {
  return new URLSearchParams([...new FormData(form)].filter(([, value]) => typeof value === 'string')).toString();
}

/** Empties a form whose entry is done with, unless the next one was begun while it was on its way. */
function empty(form, sent) {
  if (typedIn(form) === sent) form.reset();
  delete form.dataset.id;
}

/** What was typed, as it was typed. */
function wordsOf(form, body) {
  const told = [];
  for (const [name, value] of body) {
    if (unseen.has(name) || name.endsWith('.in')) continue;
    const control = form.elements.namedItem(name);
    if (control instanceof HTMLInputElement && control.type === 'hidden') continue;
    const own = name.replace(/(Um|MmPerTurn|Mm|Turns|Deg|Pct|M2|C)$/, '').replace(/[A-Z]/g, c => ' ' + c.toLowerCase()).replace('.', ' ').trim();
    told.push(`${['um', 'mm', 'm2', 's', 'what', 'hours', 'minutes'].includes(name) ? '' : own + ' '}${value}`);
  }
  const kind = body.get('kind');
  const place = body.get('area') ?? body.get('unit');
  return `${kind === 'void' ? 'undo' : kind}${place ? `, ${place}` : ''}${told.length ? ': ' + told.join(', ') : ''}`;
}

async function written(form, sent, answer) {
  const at = new URL(answer.back ?? '/', location.origin);
  at.searchParams.set('written', answer.id);
  if (form.dataset.stay === undefined) {
    location.assign(at);
    return true;
  }
  empty(form, sent);
  const page = new DOMParser().parseFromString(await (await fetch(at, { headers: { Accept: 'text/html' } })).text(), 'text/html');
  const notice = page.querySelector('[data-notice]');
  document.querySelector('main [data-notice]')?.remove();
  if (notice) document.querySelector('main')?.prepend(document.adoptNode(notice));
  return false;
}

function clear(form) {
  form.querySelectorAll('[data-fault]').forEach(f => f.remove());
  form.querySelectorAll('[aria-invalid]').forEach(f => {
    f.removeAttribute('aria-invalid');
    f.removeAttribute('aria-describedby');
  });
}

/** Says what is wrong at each field, with what may have been meant. */
function faults(form, errors) {
  errors.forEach((error, n) => {
    const named = error.field ? form.elements.namedItem(error.field) : null;
    const controls = (named instanceof RadioNodeList ? [...named] : named ? [named] : []).filter(c => c.type !== 'hidden');
    const box = document.createElement('div');
    box.id = `fault-${error.field || 'form'}-${n}`;
    box.dataset.fault = '';
    box.setAttribute('role', 'alert');
    const text = document.createElement('p');
    text.className = 'fault';
    text.textContent = `${controls.length || !error.field ? '' : error.field + ': '}${error.message} ${error.code === 'implausible' ? 'Mend it, or say that it is right as it is.' : error.remedy}`;
    box.append(text);
    if (error.code === 'not-paired') box.append(link('/pair', 'Pair this device'));
    if (error.code === 'implausible') box.append(...choices(error));
    for (const c of controls) {
      c.setAttribute('aria-invalid', 'true');
      c.setAttribute('aria-describedby', box.id);
    }
    const place = controls[0]?.closest('fieldset, .field, p, label');
    if (place) place.after(box);
    else form.prepend(box);
    if (n === 0) (controls[0] ?? box).focus?.();
  });
}

function* choices(error) {
  for (const choice of error.choices ?? []) {
    const button = document.createElement('button');
    Object.assign(button, { className: 'alt', name: 'instead', value: choice.instead, textContent: `${choice.written}: ${choice.reading}` });
    yield button;
  }
  const right = document.createElement('label');
  const tick = Object.assign(document.createElement('input'), { type: 'checkbox', name: 'confirm', value: error.field });
  right.className = 'row';
  right.append(tick, ' It is right as it is');
  yield right;
}

function link(href, text) {
  const a = Object.assign(document.createElement('a'), { href, textContent: text, className: 'row' });
  return a;
}
