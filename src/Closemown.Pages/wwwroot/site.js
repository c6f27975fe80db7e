// The pages' own script: all works without it, but for what waits out of reach and what changes by itself.
import { listen } from './entering.js';
import { flush, show } from './waiting.js';
import { watch } from './live.js';

listen();
// Few pages have a form that cannot wait on the device.
if (document.querySelector('form[method="post"]:not([data-entry])')) import('./holding.js').then(h => h.hold());
show();
flush();
watch();

const asOf = document.body.dataset.asOf;
if (asOf) {
  const bar = document.createElement('p');
  bar.className = 'bar';
  bar.dataset.copy = '';
  bar.setAttribute('role', 'status');
  const at = new Date(asOf);
  const today = at.toDateString() === new Date().toDateString();
  bar.textContent = `As of ${today ? '' : at.toLocaleDateString() + ', '}${at.toTimeString().slice(0, 5)}, out of reach.`;
  document.querySelector('main')?.before(bar);
}

// Browsers have workers on https and on the machine itself only; elsewhere pages go on without copies.
if ('serviceWorker' in navigator) {
  navigator.serviceWorker.register('/sw.js').catch(() => { });
}
