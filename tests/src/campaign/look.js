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
  // With large letters the headline reaches over the middle of the screen.
  if (!at) { it.scrollIntoView({ block: 'end' }); scrollBy(0, 100); at = hit(); }
  return at;
};
// What lies there instead of it.
const covering = (css) => by(css).map((it) => {
  const box = it.getBoundingClientRect();
  const top = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
  return `${box.left},${box.top} ${box.width}x${box.height}: ${top ? top.outerHTML.slice(0, 150) : 'nothing'}`;
}).join(' | ');
const named = (id) => `[data-testid=${JSON.stringify(id)}]`;
// How many of a thing, with one fewer and one more.
const counted = (output, within = '') => {
  const css = (which) => within + named(output.dataset.testid.replace('count-', `${which}-`));
  const can = (which) => !!document.querySelector(`${css(which)}:not(:disabled)`);
  return { kind: 'count', text: output.textContent, fewer: can('fewer') && css('fewer'), more: can('more') && css('more') };
};
// The row of an item: two may have the same name.
const ofItem = (id) => `li.part:has(a.row[href$="/item/${id}"]) `;
const fields = () => {
  const all = {};
  for (const it of document.querySelectorAll('form.asks input.field__input')) {
    if (it.closest('.list__row')) continue;
    const id = it.id.slice(6);
    const kind = it.inputMode === 'text' ? 'words' : 'keys';
    const step = (which) => by(`${named(`${which}-${id}`)}:not(:disabled)`).length > 0 && named(`${which}-${id}`);
    all[id] = { kind, text: it.value, css: `[id=${JSON.stringify(it.id)}]`, fewer: step('fewer'), more: step('more') };
  }
  for (const it of document.querySelectorAll('form.asks input[type=radio]')) {
    const one = all[it.name] ??= { kind: 'choice', text: '', options: [] };
    one.options.push(it.id.slice(it.name.length + 1));
    if (it.checked) one.text = it.id.slice(it.name.length + 1);
  }
  for (const it of document.querySelectorAll('form.asks select[id^=field-]')) {
    const options = [...it.options].map((one) => one.value);
    all[it.id.slice(6)] = { kind: 'pick', text: it.value, options, css: `[id=${JSON.stringify(it.id)}]` };
  }
  for (const list of document.querySelectorAll('form.asks .list[data-testid^=list-]')) {
    // What is left of a board belongs to that board.
    const board = list.closest('[data-testid=different]')?.closest('[data-testid^=board-]')?.dataset.testid;
    const id = list.dataset.testid.slice(5) + (board ? `@${board}` : '');
    const whole = list.querySelector('textarea');
    if (whole) {
      all[id] = { kind: 'whole', text: whole.value, css: named(whole.dataset.testid) };
      continue;
    }
    const rows = [...list.querySelectorAll('.list__row')];
    all[`${id}/rows`] = { kind: 'rows', text: String(rows.length), list: id };
    rows.forEach((row, at) => {
      const cell = (part, kind, it) => {
        if (it) all[`${id}/${at}/${part}`] = { kind, text: it.value, css: named(it.dataset.testid), list: id };
      };
      cell('name', 'words', row.querySelector('.list__name'));
      const [size, to] = row.querySelectorAll('input.field__input');
      cell('size', 'keys', size);
      cell('to', 'keys', to);
      cell('price', 'keys', row.querySelector('.list__price'));
      const output = row.querySelector('output');
      if (output) all[`${id}/${at}/count`] = { ...counted(output), list: id, at };
    });
  }
  // Parts of a job, and lengths at the yard, as rows with their number.
  for (const row of document.querySelectorAll('li.part')) {
    const output = row.querySelector('output');
    const id = row.querySelector('a.row')?.getAttribute('href').split('/').at(-1);
    if (output && id) all[`count/${id}`] = { ...counted(output, ofItem(id)), item: Number(id) };
  }
  const pasted = document.querySelector('[data-testid=pasted]');
  if (pasted) all.pasted = { kind: 'whole', text: pasted.value, css: '[data-testid=pasted]' };
  const question = document.querySelector('[data-testid=question] .question__now');
  if (question) all.question = { kind: 'question', text: question.textContent };
  for (const id of ['kept-title', 'job-title', 'keep-title']) {
    const it = document.querySelector(`[data-testid=${id}]`);
    if (it) all[id] = { kind: 'title', text: it.value, css: `[data-testid=${id}]` };
  }
  for (const it of document.querySelectorAll('[data-testid^=member-]')) {
    const text = it.ariaPressed === 'true' ? 'yes' : 'no';
    all[it.dataset.testid] = { kind: 'member', text, css: named(it.dataset.testid) };
  }
  for (const it of document.querySelectorAll('button.tick')) {
    const part = it.closest('li.part')?.querySelector('a.row')?.getAttribute('href').split('/').at(-1);
    if (part === undefined) continue;
    const text = it.ariaPressed === 'true' ? 'yes' : 'no';
    const number = it.dataset.testid.split('-').at(-1);
    all[`tick/${part}/${number}`] = { kind: 'tick', text, css: ofItem(part) + named(it.dataset.testid) };
  }
  return all;
};
// Spaces, and the mark that has a sign drawn in colour: nobody sees how many there are.
const tidy = (text) => text.replaceAll('\uFE0F', '').trim().replace(/\s+/g, ' ');
const same = (id, here, wanted) => {
  if (tidy(here) === tidy(wanted)) return true;
  // What is counted or paid is kept as the number that it comes to, and nobody asks for the sum again.
  const whole = (text) => (text.trim() === '' ? NaN : Number(text));
  const number = (text) => text.replaceAll('-', '+-').split('+').map((it) => it.split('/').map(whole).reduce((a, b) => a / b)).reduce((a, b) => a + b);
  return ['price', 'quantity', 'gauge'].includes(id) && number(here) === number(wanted);
};
// A page that is asked to load again stays for a moment.
const loadAgain = () => { window.isGoing = true; };
const isReady = () => !window.isGoing && document.documentElement.dataset.app === 'started' && !document.querySelector('.skeleton__slow');
const isThere = (hash, mark) => isReady() && (location.hash || '#/') === hash && (!mark || document.querySelector(mark));
const words = () => by('[role=alert], .trouble').map((it) => tidy(it.innerText)).join(' | ');
// The buttons that bring a form out on the page at hand.
const openers = () => by('[data-testid=spoiled-rack], button[data-testid^=different-]').map((it) => it.dataset.testid);
// A list by its name on the page.
const plain = (list) => list.split('@')[0];
const isLeft = (id) => id.split(/[@/]/)[0] === 'left';
// A form about what is left is shut where nothing was said in it. Where its button is not there, it cannot be asked for now.
const isShut = (id, wanted) => {
  if (!isLeft(id)) return false;
  const board = id.split('/')[0].split('@')[1];
  const button = board ? board.replace('board-', 'different-') : 'spoiled-rack';
  const said = ([id, text]) => isLeft(id) && text !== '' && !/[/](rows|count)$/.test(id);
  return !Object.entries(wanted).some(said) || !openers().includes(button);
};
const state = () => ({
  hash: location.hash, words: words(), fields: fields(), save: !!document.querySelector('[data-testid=save-item][data-ready]'),
  undo: !!document.querySelector('[data-testid=undo]:not(:disabled)'), redo: !!document.querySelector('[data-testid=redo]:not(:disabled)'),
  items: [...document.querySelectorAll('a.row[href*="/item/"]')].map((it) => Number(it.getAttribute('href').split('/').at(-1))),
  keying: by('[data-testid=key-close]').length > 0, next: by('[data-testid=field-next]:not(:disabled)').length > 0,
  openers: openers(),
  sections: by('a[data-testid^=section-]').map((it) => it.dataset.testid),
});
// What the keypad of a field hides comes out again.
const uncover = async (wanted) => {
  if (!test('key-close') || Object.keys(wanted).every((id) => id in fields())) return;
  test('key-close').click();
  await until(() => !test('key-close'), 2000);
};
// The lists of which the text is known, asked for one after the other: a page shows one of them so.
const wholes = async (wanted, patience) => {
  const all = {};
  const button = (id) => document.querySelector(named(`as-text-${plain(id)}`));
  for (const id of Object.keys(wanted)) {
    if (id in fields() || !button(id)) continue;
    button(id).click();
    await until(() => same(id, fields()[id]?.text ?? '', wanted[id]), patience);
    if (id in fields()) all[id] = fields()[id];
    button(id)?.click();
    await until(() => !(id in fields()), 2000);
  }
  return all;
};
// What is not on the page as it should be, once that has had time to become so.
const check = async (wanted, lenient, mayHide, patience) => {
  if (patience) await uncover(wanted);
  const whole = patience ? await wholes(wanted, patience) : {};
  const now = () => ({ ...whole, ...fields() });
  const wrong = () => {
    const here = now();
    // A calculator asks for what its question needs.
    const hides = (mayHide || 'kept-title' in here) && Object.keys(here).length > 1;
    const isWrong = ([id, text]) => id in here ? !same(id, here[id].text, text) : !hides && !isShut(id, wanted);
    const all = Object.entries(wanted).filter(isWrong);
    // What is told by name stands in quotes.
    const told = lenient ? [...document.body.innerText.matchAll(/“([^”]*)”/g)].map((it) => tidy(it[1])) : [];
    // Of a list all of it is told, of a strip each of its sizes.
    const isTold = (id, wanted) => told.some((it) => {
      if (id.startsWith('strip-')) return ` ${it} `.includes(` ${wanted} `);
      return id.includes('/') ? it.includes(wanted) : same(id, it, wanted);
    });
    // Of a row that stands in quotes nobody misses a field in which nothing is.
    const row = (id) => id.slice(0, id.lastIndexOf('/'));
    const isOfToldRow = (id) => id.includes('/') && !(id in here)
      && Object.entries(wanted).some(([other, text]) => text && row(other) === row(id) && isTold(other, tidy(text)));
    return all.filter(([id, text]) => !(text ? isTold(id, tidy(text)) : isOfToldRow(id)));
  };
  await until(() => wrong().length === 0, patience);
  const here = now();
  return wrong().map(([id, text]) => ({ id, wanted: text, found: here[id]?.text ?? null }));
};
