// Forms of more than one entry are sent as the browser sends them, and cannot wait on the device: out of reach they stay on the page as they were typed.
const patienceMs = 4000;

/** Looks, before such a form leaves its page, whether the server is there. */
export function hold() {
  document.addEventListener('submit', async e => {
    const form = e.target;
    if (form.matches('[data-entry]') || form.method !== 'post' || form.dataset.reached !== undefined) return;
    e.preventDefault();
    if (form.dataset.asking !== undefined) return;
    form.dataset.asking = '';
    const there = await reached();
    delete form.dataset.asking;
    form.querySelector('[data-held]')?.remove();
    if (!there) return tell(form);
    form.dataset.reached = '';
    form.requestSubmit(e.submitter);
    // Whoever comes back to the page sends it anew.
    delete form.dataset.reached;
  });
}

async function reached() {
  try {
    return (await fetch('/health', { cache: 'no-store', signal: AbortSignal.timeout(patienceMs) })).ok;
  } catch {
    return false;
  }
}

function tell(form) {
  const box = document.createElement('p');
  box.className = 'fault';
  box.dataset.held = '';
  box.setAttribute('role', 'alert');
  box.textContent = 'The machine is out of reach. What you typed stays here: leave this page open, and send it again when the machine is back.';
  form.append(box);
}
