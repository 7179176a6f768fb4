/** The page's own look: one column on a phone, two on a wide screen, black on white on paper, light and dark. */
export const STYLE = `
:root { color-scheme: light dark; --ink: #1a1a1a; --paper: #fff; --quiet: #4a4a4a; --rule: #b5b5b5; --warn: #8a1c00; --soft: #f3f1ec; }
@media (prefers-color-scheme: dark) { :root { --ink: #eee; --paper: #161616; --quiet: #bdbdbd; --rule: #555; --warn: #ffb39c; --soft: #242424; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1rem; max-width: 60rem; font: 1rem/1.45 system-ui, Helvetica, Arial, sans-serif; color: var(--ink); background: var(--paper); overflow-wrap: anywhere; }
h1 { font-size: 1.6rem; line-height: 1.2; margin: 0 0 .3rem; }
h2 { font-size: 1.2rem; margin: 1.8rem 0 .5rem; border-bottom: 2px solid var(--rule); padding-bottom: .15rem; }
h3 { font-size: 1rem; margin: 1.1rem 0 .3rem; }
p, ul, ol { margin: .4rem 0; }
ul, ol { padding-left: 1.4rem; }
li { margin: .2rem 0; }
.quiet { color: var(--quiet); }
.key { display: grid; grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr)); gap: .6rem; margin: .8rem 0; padding: 0; list-style: none; }
.key li { background: var(--soft); padding: .6rem .8rem; border-radius: .3rem; margin: 0; }
.key b { display: block; font-size: 1.25rem; }
.caution { border-left: .35rem solid var(--warn); padding: .3rem .8rem; margin: .5rem 0; }
.caution b { color: var(--warn); }
figure { margin: 1rem 0; }
figure svg { display: block; width: 100%; height: auto; max-height: 30rem; background: #fff; }
figure.small svg { max-height: 15rem; }
figcaption { font-size: .9rem; color: var(--quiet); margin-top: .3rem; }
table { border-collapse: collapse; width: 100%; margin: .6rem 0 1.2rem; }
caption { text-align: left; font-weight: 600; padding: .2rem 0; }
th, td { text-align: left; vertical-align: top; padding: .25rem .6rem .25rem 0; border-bottom: 1px solid var(--rule); font-weight: 400; }
tbody th { color: var(--quiet); width: 45%; }
.grid tbody th { width: auto; color: inherit; }
thead th { font-weight: 600; overflow-wrap: normal; vertical-align: bottom; }
.wide { overflow-x: auto; overflow-wrap: break-word; }
@media screen and (max-width: 30rem) {
  .wide { font-size: .85rem; }
  .folds thead { display: none; }
  .folds, .folds caption, .folds tbody, .folds tr { display: block; }
  .folds tr { border-top: 2px solid var(--rule); padding: .3rem 0; }
  .folds tbody th, .folds td { display: flex; border: 0; padding: .1rem 0; }
  .folds tbody th { font-weight: 600; }
  .folds [data-head]::before { content: attr(data-head); flex: 0 0 45%; padding-right: .6rem; color: var(--quiet); font-weight: 400; }
}
.steps li { list-style: none; position: relative; padding-left: 2rem; margin: .45rem 0; }
.steps { padding-left: 0; }
.steps .box { position: absolute; left: 0; top: .15rem; width: 1.15rem; height: 1.15rem; border: 2px solid var(--ink); border-radius: .15rem; }
@media print {
  :root { color-scheme: light; --ink: #000; --paper: #fff; --quiet: #222; --rule: #999; --warn: #000; --soft: #fff; }
  @page { margin: 14mm; }
  html { font-size: 9.5pt; }
  body { max-width: none; padding: 0; line-height: 1.35; }
  h1 { font-size: 1.5rem; }
  h2 { margin: 1.1rem 0 .35rem; }
  h3 { margin: .8rem 0 .2rem; }
  h2, h3, .caution { break-after: avoid; }
  figure, table, .wide, tr, .caution, .key, .steps li { break-inside: avoid; }
  p, li { orphans: 3; widows: 3; }
  figure { margin: .5rem 0; }
  figure svg { max-height: 92mm; }
  figure.small svg { max-height: 58mm; }
  table { margin: .35rem 0 .7rem; }
  caption { break-after: avoid; }
  th, td { padding: .12rem .5rem .12rem 0; }
  .key { gap: .4rem; padding: 0 1px; grid-template-columns: repeat(3, minmax(0, 1fr)); }
  .key li { border: 1px solid #999; padding: .3rem .5rem; }
  .key b { font-size: 1.15rem; }
  .steps li { margin: .25rem 0; }
  .wide { overflow: visible; }
}
`;
