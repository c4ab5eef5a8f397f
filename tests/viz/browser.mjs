// SPDX-License-Identifier: GPL-3.0-or-later
// The browser that the tests look with, and the pages that they look at.
import {execFileSync} from 'node:child_process';
import {existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import {tmpdir} from 'node:os';
import {join} from 'node:path';

const {TUCKWRIGHT_PROGRAM: program, TUCKWRIGHT_MODULES: modules, TUCKWRIGHT_SOURCE_DIR: source} = process.env;

// Where Debian and others put it.
export const chromiumPath = () =>
  [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(
    (path) => path && existsSync(path),
  );

const flags = [
  '--no-sandbox',
  '--no-first-run',
  '--disable-background-networking',
  '--use-angle=swiftshader', // draws without a graphics card
  '--enable-unsafe-swiftshader',
];

export class Bench {
  static async open() {
    const bench = new Bench();
    const {chromium} = createRequire(join(modules, 'package.json'))('playwright-core');
    bench.folder = mkdtempSync(join(tmpdir(), 'tuckwright-viz-'));
    bench.browser = await chromium.launch({executablePath: chromiumPath(), args: flags});
    bench.blind = null;
    return bench;
  }

  // A browser in which WebGL is switched off.
  async blindBrowser() {
    const {chromium} = createRequire(join(modules, 'package.json'))('playwright-core');
    this.blind ??= await chromium.launch({
      executablePath: chromiumPath(),
      args: ['--no-sandbox', '--no-first-run', '--disable-background-networking', '--disable-gpu', '--disable-3d-apis'],
    });
    return this.blind;
  }

  async close() {
    await this.browser.close();
    await this.blind?.close();
    rmSync(this.folder, {recursive: true});
  }

  run(...options) {
    execFileSync(program, options, {stdio: ['ignore', 'ignore', 'inherit']});
  }

  // A sample kit packed: {bundle, html}, the saved bundle and the path of its page.
  made(kit, ...options) {
    const name = kit.replace(/\W/g, '_');
    const saved = join(this.folder, `${name}.json`);
    const html = join(this.folder, `${name}.html`);
    if (!existsSync(saved)) {
      this.run('pack', join(source, 'kits', kit), '--effort', 'quick', '--json', saved);
    }
    this.run('look', saved, '--html', html, ...options);
    return {bundle: JSON.parse(readFileSync(saved, 'utf8')), html, saved};
  }

  // The same page with its data changed, to see that a check finds it out.
  spoilt({html}, spoil, more = '') {
    const text = readFileSync(html, 'utf8');
    const [, data] = text.match(/<script type="application\/json">(.*?)<\/script>/s);
    const changed = JSON.parse(data);
    spoil(changed);
    const path = join(this.folder, 'spoilt.html');
    const within = JSON.stringify(changed).replaceAll('<', '\\u003c');
    writeFileSync(path, text.replace(data, () => within).replace('</h1>', () => `</h1>${more}`));
    return path;
  }

  async visit(html, options = {}, browser = this.browser) {
    const context = await browser.newContext({viewport: {width: 1120, height: 500}, reducedMotion: 'reduce', ...options});
    const visit = new Visit(context, await context.newPage());
    await visit.go(html);
    return visit;
  }
}

// A page that is open.
export class Visit {
  constructor(context, page) {
    this.context = context;
    this.page = page;
    this.heard = {errors: [], requests: []};
    page.on('pageerror', (error) => this.heard.errors.push(String(error)));
    page.on('console', (message) => {
      if (message.type() === 'error') {
        this.heard.errors.push(message.text());
      }
    });
    page.on('request', (request) => {
      if (request.url() !== this.url && !request.url().startsWith('data:')) {
        this.heard.requests.push(request.url());
      }
    });
  }

  async go(html) {
    this.url = `file://${html}`;
    await this.page.goto(this.url);
    await this.settle();
  }

  // Waits until all is drawn.
  async settle() {
    await this.page.waitForFunction(() => window.tuckwrightPicture?.settled());
  }

  async handle(name, ...inputs) {
    return this.page.evaluate(([n, i]) => window.tuckwrightPicture[n](...i), [name, inputs]);
  }

  async slide(name, value) {
    await this.page.getByRole('slider', {name}).evaluate((slider, v) => {
      slider.value = v;
      slider.dispatchEvent(new Event('input'));
    }, value);
    await this.settle();
  }

  async press(name, group) {
    const within = group ? this.page.getByRole('group', {name: group}) : this.page;
    await within.getByRole('button', {name, exact: true}).first().click();
    await this.settle();
  }

  // Goes through all steps by the slider and the button, and tells for each what is drawn half way and what is said in
  // the end, without waiting for each to be on the screen.
  async walk(count) {
    return this.page.evaluate((steps) => {
      const {shadowRoot: tree} = document.querySelector('.tuckwright-picture-host');
      const slider = tree.querySelector('[aria-label="Packing step"]');
      const next = [...tree.querySelectorAll('button')].find((button) => button.textContent === 'From the start');
      next.click();
      const empty = window.tuckwrightPicture.surfaces();
      const seen = [];
      for (let k = 0; k < steps; k += 1) {
        slider.value = k + 0.5;
        slider.dispatchEvent(new Event('input'));
        const halfWay = window.tuckwrightPicture.surfaces();
        next.click();
        seen.push({halfWay, text: tree.querySelector('.step').textContent});
      }
      return {empty, seen};
    }, count);
  }

  // Labels that are seen, {text, left, right, top, bottom}, and the picture's own place.
  async labels() {
    return this.page.evaluate(() => {
      const {shadowRoot: tree} = document.querySelector('.tuckwright-picture-host');
      const placeOf = (node) => {
        const {left, right, top, bottom} = node.getBoundingClientRect();
        return {left, right, top, bottom};
      };
      const seen = [...tree.querySelectorAll('.label')].filter((node) => node.style.visibility !== 'hidden');
      return {
        labels: seen.map((node) => ({text: node.textContent, ...placeOf(node)})),
        field: placeOf(tree.querySelector('.field')),
      };
    });
  }

  // The share of the canvas on which something is drawn, as it is on the screen.
  async shareDrawn() {
    const shot = await this.page.locator('canvas').screenshot();
    return this.page.evaluate(async (data) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const canvas = new OffscreenCanvas(image.width, image.height);
      const pen = canvas.getContext('2d');
      pen.drawImage(image, 0, 0);
      const {data: pixels} = pen.getImageData(0, 0, image.width, image.height);
      const paper = [...pixels.slice(4 * 40, 4 * 40 + 3)]; // near the upper left corner, where nothing is drawn
      let other = 0;
      for (let k = 0; k < pixels.length; k += 4) {
        other += [0, 1, 2].some((i) => Math.abs(pixels[k + i] - paper[i]) > 12) ? 1 : 0;
      }
      return other / (pixels.length / 4);
    }, shot.toString('base64'));
  }

  async leave() {
    await this.context.close();
  }
}
