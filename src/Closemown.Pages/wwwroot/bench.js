// At the bench: a check is written down with its last answer, and the lap timer needs no touch while the reel turns.

const COUNT_IN_S = 5, LAST_S = 10;

prepare();
// When the book has changed the page's main part is put anew.
new MutationObserver(changes => { if (changes.some(c => [...c.addedNodes].some(n => n.nodeName === 'MAIN'))) prepare(); }).observe(document.body, { childList: true });

function prepare() {
  for (const box of document.querySelectorAll('main [data-answers]')) writeWithTheLast(box);
  for (const box of document.querySelectorAll('main [data-timer]')) timer(box);
}

/** The last answer by finger or mouse writes the check down. By keyboard the arrows choose, so there the button does. */
function writeWithTheLast(box) {
  const form = box.querySelector('form');
  const stations = new Set([...form.querySelectorAll('input[type=radio]')].map(r => r.name));
  box.querySelector('[data-answers-all]').hidden = false;
  form.addEventListener('click', e => {
    if (!e.target.matches('input[type=radio]') || e.detail === 0) return;
    if ([...stations].every(name => form.querySelector(`input[name="${name}"]:checked`))) form.requestSubmit(form.querySelector('button[type=submit]'));
  });
}

function timer(box) {
  const dialog = box.querySelector('dialog');
  const [start, stop, left, phase] = ['start', 'stop', 'left', 'phase'].map(n => box.querySelector(`[data-timer-${n}]`));
  const field = document.getElementById(box.dataset.into);
  const whole = Number(box.dataset.seconds);
  let sound = null, awake = null, ticking = 0, from = 0, told = new Set(), state = 'ready';

  box.hidden = false;
  for (const clock of document.querySelectorAll('[data-clock]')) clock.hidden = true;
  start.addEventListener('click', begin);
  stop.addEventListener('click', () => state === 'over' ? close() : end(false));
  dialog.addEventListener('cancel', e => {
    e.preventDefault();
    if (state === 'over') close();
    else end(false);
  });
  document.addEventListener('visibilitychange', () => { if (state === 'in' || state === 'turning') stayAwake(); });

  function begin() {
    // Sound is allowed from a touch on only.
    try { sound ??= new AudioContext(); sound.resume(); } catch { sound = null; }
    stayAwake();
    told = new Set();
    state = 'in';
    from = performance.now();
    stop.textContent = 'Stop';
    // The page is left as it is meanwhile, whatever comes into the book.
    box.dataset.busy = '';
    dialog.classList.remove('over');
    dialog.showModal();
    say('Hands free.', 'Hands free');
    ticking = setInterval(tick, 100);
    tick();
  }

  function tick() {
    const gone = (performance.now() - from) / 1000;
    if (state === 'in') {
      const before = Math.ceil(COUNT_IN_S - gone);
      left.textContent = Math.max(before, 1);
      if (gone < COUNT_IN_S) return;
      state = 'turning';
      from += COUNT_IN_S * 1000;
      mark('Go. Touch nothing.', 'Go', 1);
      return tick();
    }
    const rest = whole - gone;
    left.textContent = minutes(Math.max(0, Math.ceil(rest)));
    if (rest <= 0) return end(true);
    if (rest <= LAST_S && whole > 2 * LAST_S) once('last', () => mark('Ten seconds', 'Ten seconds', 2));
    else if (rest <= whole / 2) once('half', () => mark('Half-way', 'Half-way', 1));
  }

  function end(byItself) {
    const turned = state === 'turning' ? Math.min((performance.now() - from) / 1000, whole) : 0;
    clearInterval(ticking);
    state = 'over';
    awake?.release().catch(() => { });
    awake = null;
    dialog.classList.add('over');
    left.textContent = minutes(Math.round(turned));
    stop.textContent = 'Close';
    mark('Stop. Lead off. Wash, look.', byItself ? 'Stop. Lead off. Wash, and look.' : 'Stopped', 3);
    if (turned > 0) field.value = byItself ? field.defaultValue : (turned / 60).toFixed(1).replace('.', box.dataset.sign);
  }

  function close() {
    state = 'ready';
    delete box.dataset.busy;
    dialog.close();
    field.form.querySelector('button[type=submit]').focus();
  }

  function once(name, act) {
    if (told.has(name)) return;
    told.add(name);
    act();
  }

  /** Shown, beeped, shaken and spoken: noise or gloves take any one of them away. */
  function mark(shown, spoken, beeps) {
    for (let n = 0; n < beeps; n++) beep(n * 0.35);
    navigator.vibrate?.(Array.from({ length: beeps * 2 - 1 }, (_, n) => n % 2 ? 120 : 350));
    say(shown, spoken);
  }

  function say(shown, spoken) {
    phase.textContent = shown;
    if (!('speechSynthesis' in globalThis)) return;
    const words = new SpeechSynthesisUtterance(spoken);
    words.lang = document.documentElement.lang;
    speechSynthesis.cancel();
    speechSynthesis.speak(words);
  }

  function beep(afterS) {
    if (!sound) return;
    const [tone, loud, at] = [sound.createOscillator(), sound.createGain(), sound.currentTime + afterS];
    tone.type = 'square';
    tone.frequency.value = 1000;
    loud.gain.setValueAtTime(0.4, at);
    loud.gain.setValueAtTime(0, at + 0.2);
    tone.connect(loud).connect(sound.destination);
    tone.start(at);
    tone.stop(at + 0.2);
  }

  async function stayAwake() {
    try {
      if (document.visibilityState === 'visible' && (!awake || awake.released)) awake = await navigator.wakeLock?.request('screen') ?? null;
    } catch { awake = null; }
  }
}

function minutes(seconds) {
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}
