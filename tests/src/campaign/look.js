// What a walk asks of the page: what can be seen, where it lies, and what stands in it.
const sleep = (ms) => new Promise((go) => setTimeout(go, ms));
const until = async (what, patience) => {
  const end = performance.now() + patience;
  for (;;) {
    let found;
    try { found = what(); } catch (error) { found = undefined; }
    if (found) return found;
    if (performance.now() > end) return null;
    await sleep(8);
  }
};
const by = (css) => [...document.querySelectorAll(css)].filter((it) => it.checkVisibility());
const test = (id) => by(`[data-testid=${JSON.stringify(id)}]`)[0];
// Where a finger hits an element, or nothing when something lies over it.
const place = (css) => {
  const it = by(css)[0];
  if (!it || it.disabled) return null;
  const hit = () => {
    const box = it.getBoundingClientRect();
    const x = box.left + box.width / 2, y = box.top + box.height / 2;
    const top = document.elementFromPoint(x, y);
    return top && (it.contains(top) || top.contains(it) && top.tagName === 'LABEL') ? { x, y } : null;
  };
  let at = hit();
  if (!at) { it.scrollIntoView({ block: 'center' }); at = hit(); }
  return at;
};
// What lies there instead of it.
const covering = (css) => by(css).map((it) => {
  const box = it.getBoundingClientRect();
  const top = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
  return `${box.left},${box.top} ${box.width}x${box.height}: ${top ? top.outerHTML.slice(0, 150) : 'nothing'}`;
}).join(' | ');
const fields = () => {
  const all = {};
  for (const it of document.querySelectorAll('form.asks input.field__input:not(.list *)')) {
    all[it.id.slice(6)] = { kind: it.inputMode === 'text' ? 'words' : 'keys', text: it.value, css: `[id=${JSON.stringify(it.id)}]` };
  }
  for (const it of document.querySelectorAll('form.asks input[type=radio]')) {
    const one = all[it.name] ??= { kind: 'choice', text: '', options: [] };
    one.options.push(it.id.slice(it.name.length + 1));
    if (it.checked) one.text = it.id.slice(it.name.length + 1);
  }
  for (const id of ['kept-title', 'job-title']) {
    const it = document.querySelector(`[data-testid=${id}]`);
    if (it) all[id] = { kind: 'title', text: it.value, css: `[data-testid=${id}]` };
  }
  for (const it of document.querySelectorAll('[data-testid^=member-]')) {
    const text = it.ariaPressed === 'true' ? 'yes' : 'no';
    all[it.dataset.testid] = { kind: 'member', text, css: `[data-testid=${JSON.stringify(it.dataset.testid)}]` };
  }
  for (const it of document.querySelectorAll('button.tick')) {
    const part = it.closest('li.part')?.querySelector('a.row')?.getAttribute('href').split('/').at(-1);
    if (part === undefined) continue;
    const text = it.ariaPressed === 'true' ? 'yes' : 'no';
    const number = it.dataset.testid.split('-').at(-1);
    all[`tick/${part}/${number}`] = { kind: 'tick', text, css: `[data-testid=${JSON.stringify(it.dataset.testid)}]` };
  }
  return all;
};
const tidy = (text) => text.trim().replace(/\s+/g, ' ');
const same = (id, here, wanted) => {
  if (tidy(here) === tidy(wanted)) return true;
  // What is counted or paid is kept as the number that it comes to, and nobody asks for the sum again.
  const number = (text) => text.replaceAll('-', '+-').split('+').map((it) => (it.trim() === '' ? NaN : Number(it))).reduce((a, b) => a + b);
  return ['price', 'quantity', 'gauge'].includes(id) && number(here) === number(wanted);
};
const isReady = () => document.documentElement.dataset.app === 'started' && !document.querySelector('.skeleton__slow');
const isThere = (hash, mark) => isReady() && (location.hash || '#/') === hash && (!mark || document.querySelector(mark));
const words = () => by('[role=alert], .trouble').map((it) => tidy(it.innerText)).join(' | ');
const state = () => ({
  hash: location.hash, words: words(), fields: fields(), save: !!document.querySelector('[data-testid=save-item][data-ready]'),
  undo: !!document.querySelector('[data-testid=undo]:not(:disabled)'), redo: !!document.querySelector('[data-testid=redo]:not(:disabled)'),
  items: [...document.querySelectorAll('a.row[href*="/item/"]')].map((it) => Number(it.getAttribute('href').split('/').at(-1))),
  keying: by('[data-testid=key-close]').length > 0, next: by('[data-testid=field-next]:not(:disabled)').length > 0,
  sections: by('[data-testid^=section-]').map((it) => it.dataset.testid),
});
// What is not on the page as it should be, once that has had time to become so.
const check = async (wanted, lenient, mayHide, patience) => {
  const wrong = () => {
    const here = fields();
    // A calculator asks for what its question needs.
    const hides = (mayHide || 'kept-title' in here) && Object.keys(here).length > 1;
    const isWrong = ([id, text]) => id in here ? !same(id, here[id].text, text) : !hides;
    const all = Object.entries(wanted).filter(isWrong);
    const text = lenient ? tidy(document.body.innerText) : '';
    return all.filter(([id, wanted]) => !(lenient && wanted && text.includes(tidy(wanted))));
  };
  await until(() => wrong().length === 0, patience);
  const here = fields();
  return wrong().map(([id, text]) => ({ id, wanted: text, found: here[id]?.text ?? null }));
};
