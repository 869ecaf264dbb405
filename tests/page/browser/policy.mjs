// What the content policy forbids is forbidden, and what these tests watch for is seen when it happens: markup or
// script that came in by a name would be caught.
import {openPage} from './opened_page.mjs';

export async function testPolicy(browser, html, checks) {
  const {page, context, seen} = await openPage(browser, html);
  const policy = await page.getAttribute('meta[http-equiv="Content-Security-Policy"]', 'content');
  checks.that(policy.startsWith('default-src \'none\'; '), 'the policy allows nothing but what it names', policy);
  checks.that(
      !/unsafe-inline|'unsafe-eval'|https?:|\*|connect-src/.test(policy),
      'no script or style without its hash, no address', policy);
  checks.none(seen, 'nothing on the console, no request');
  await page.evaluate(() => {
    window.broken = [];
    document.addEventListener('securitypolicyviolation', (fault) => window.broken.push(fault.effectiveDirective));
    const script = document.createElement('script');
    script.textContent = 'document.title = "by script"';
    document.body.append(script);
    const image = document.createElement('img');
    image.setAttribute('onerror', 'document.title = "by a handler"');
    image.src = 'https://example.invalid/x.png';
    document.body.append(image);
    const styled = document.createElement('div');
    styled.innerHTML = '<p style="color: red">x</p>';
    document.body.append(styled);
  });
  await page.waitForFunction(() => window.broken.length >= 4);
  const broken = await page.evaluate(() => window.broken);
  checks.that(
      ['script-src-elem', 'script-src-attr', 'img-src', 'style-src-attr'].every((one) => broken.includes(one)),
      'what a hostile name would bring is refused: script, handler, picture, style', broken.join(', '));
  checks.that(!/^by /.test(await page.title()), 'and none of it ran', await page.title());
  checks.equal(
      await page.evaluate(() => fetch('https://example.invalid/').then(() => 'sent', () => 'refused')), 'refused',
      'nothing is asked of the net');
  checks.that(
      seen.some((line) => /console error/.test(line)), 'and these tests see it on the console', seen.join('; '));
  await context.close();
}
