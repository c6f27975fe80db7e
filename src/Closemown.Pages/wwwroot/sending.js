// Sends a form's body to the server, and tells apart what was refused from what did not arrive.
const patienceMs = 15000;

/** The body as it was answered: {ok, …} or {ok: false, error}; null where the server was not reached, or cannot work just now. */
export async function send(body) {
  let answer;
  try {
    answer = await fetch('/enter', {
      method: 'POST',
      headers: { Accept: 'application/json', 'Content-Type': 'application/x-www-form-urlencoded;charset=UTF-8' },
      body: body.toString(),
      signal: AbortSignal.timeout(patienceMs),
    });
    if ([502, 503, 504].includes(answer.status)) return null;
    return await answer.json();
  } catch {
    return answer && !answer.ok && answer.status < 500
      ? { ok: false, error: { code: 'fault', field: '', message: `The server answered ${answer.status}.`, remedy: 'Open the page anew.' } }
      : null;
  }
}

/** A token that is good now; null where the server is not reached, '' where this device may not have one. */
export async function freshToken() {
  try {
    const answer = await fetch('/form-token', { headers: { Accept: 'application/json' }, cache: 'no-store', signal: AbortSignal.timeout(patienceMs) });
    if (answer.status === 401) return '';
    return answer.ok ? (await answer.json()).form : null;
  } catch {
    return null;
  }
}

/** A UUID of version 7 (RFC 9562, 5.7). Not crypto.randomUUID, which plain http does not have. */
export function newId() {
  const b = crypto.getRandomValues(new Uint8Array(16));
  let ms = Date.now();
  for (let i = 5; i >= 0; i--) {
    b[i] = ms % 256;
    ms = Math.floor(ms / 256);
  }
  b[6] = 0x70 | (b[6] & 0x0f);
  b[8] = 0x80 | (b[8] & 0x3f);
  const hex = Array.from(b, x => x.toString(16).padStart(2, '0')).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}

/** Now, with the offset of this device: 2026-05-03T10:30:00+01:00. */
export function localTime(at = new Date()) {
  const two = n => String(n).padStart(2, '0');
  const minutes = -at.getTimezoneOffset();
  const away = Math.abs(minutes);
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}T${two(at.getHours())}:${two(at.getMinutes())}:${two(at.getSeconds())}`
    + `${minutes < 0 ? '-' : '+'}${two(Math.floor(away / 60))}:${two(away % 60)}`;
}
