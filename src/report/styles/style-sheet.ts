import { sourceSansLatin } from './source-sans.ts';

/** Text as a CSS string that cannot end the rule or the element it stands in. */
export const cssString = (text: string): string =>
  `"${[...text].map((character) => (/[A-Za-z0-9 ,.-]/.test(character) ? character : /[\p{C}]/u.test(character) ? ' ' : `\\${character.codePointAt(0)?.toString(16)} `)).join('').slice(0, 400)}"`;

/** Formats that the report prints on; without one the printer decides. */
export type Paper = 'A4' | 'letter';

/** Ink on paper; the samples are the only colour beside the two hues of the verdicts, which never stand without their line and word. */
export const styleSheet = (foot: string, paper?: Paper): string => `
@font-face{font-family:"Source Sans 3";font-weight:200 900;font-display:block;src:url(data:font/woff2;base64,${sourceSansLatin}) format("woff2")}
:root{--ink:#141414;--quiet:#4d4d4d;--faint:#c4c4c4;--hair:#dedede;--mat:#b3b3b3;--clash:#96261a;--open:#6b5200}
*{box-sizing:border-box}
html{font:15px/1.45 "Source Sans 3","Segoe UI",Roboto,"Helvetica Neue",Arial,sans-serif;color:var(--ink);background:#8c8c8c;-webkit-text-size-adjust:100%}
body{margin:0}
main{max-width:64rem;margin:0 auto;padding:3.2rem 3.6rem 5rem;background:#fff}
p,ul,dl,figure,h1,h2,h3,h4{margin:0}
a{color:inherit;text-decoration-thickness:1px;text-underline-offset:2px;text-decoration-color:#8a8a8a}
a:focus-visible,summary:focus-visible{outline:2px solid var(--ink);outline-offset:2px}
bdi,dd,dt,td,p,li,h1,h3,h4,caption,figcaption,summary,code{overflow-wrap:anywhere}
thead th{overflow-wrap:normal}
tbody th{min-width:6.5rem}
.steady{white-space:nowrap}
svg{display:block;max-width:100%;height:auto;font-family:inherit}
svg text{font-variant-numeric:tabular-nums}
.definitions{position:absolute}
.quiet,.unit{color:var(--quiet);font-weight:400}
.kind{font-weight:600;font-size:.95rem}
h1{font-weight:250;font-size:3.5rem;line-height:1.04;letter-spacing:-.018em;margin:.15rem 0 .6rem -.05em;text-wrap:balance}
h1.long{font-size:2.1rem;line-height:1.12}
.subtitle{font-size:1.1rem;max-width:46rem}
h2{font-weight:300;font-size:2rem;line-height:1.15;letter-spacing:-.01em;margin-bottom:.55rem}
h3{font-weight:600;font-size:1.18rem;line-height:1.25}
table+h3{margin-top:1.4rem}
section{margin-top:3.4rem}
section>h2{border-top:2px solid var(--ink);padding-top:.6rem}
.lead{max-width:44rem;margin-bottom:1.1rem;color:var(--quiet)}
.band{margin:1.1rem 0 1.4rem}
.band svg,.map svg{width:100%}
.band.slim{display:none}
.mat{background:var(--mat);padding:.7rem}
.map.mat{padding:.2rem}
.map figcaption{background:#fff;margin:0 -.2rem -.2rem;padding:.45rem 0 0}
figcaption{font-size:.85rem;line-height:1.35;color:var(--quiet);padding-top:.3rem}
figcaption strong{color:var(--ink)}
.start{display:grid;grid-template-columns:minmax(0,5fr) minmax(0,7fr);gap:1.6rem;align-items:start}
.found{margin-top:0}
.found ol,.steps{list-style:none;counter-reset:n;margin:0;padding:0}
.found li{counter-increment:n;display:grid;grid-template-columns:1.5rem 46px minmax(0,1fr);gap:.55rem;align-items:start;padding:.5rem 0;border-top:1px solid var(--hair)}
.found li:first-child{border-top:0;padding-top:0}
.found li::before,.steps li::before{content:counter(n);width:1.35rem;height:1.35rem;border:1.25px solid var(--ink);border-radius:50%;font-weight:700;font-size:.85rem;line-height:1.25rem;text-align:center}
.use.open{color:var(--open)}
.found .title{font-weight:600}
.found .what{font-size:.92rem;line-height:1.35;margin-top:.1rem}
.found .none{font-size:1.2rem;font-weight:300}
.found .more{padding-left:2.05rem;font-size:.92rem}
.steps li{counter-increment:n;display:grid;grid-template-columns:1.5rem minmax(0,1fr);column-gap:.55rem;padding:.2rem 0}
.steps li:first-child{padding-top:0}
.steps strong{font-weight:600}
.short{margin-top:1.7rem}
.terms>div{display:grid;grid-template-columns:9.5rem 1fr;gap:1.2rem;padding:.6rem 0;border-top:1px solid var(--hair)}
.terms{margin:1rem 0}
dt{font-weight:600}
dd{margin:0;max-width:47rem}
.short-terms dt{padding-top:.05rem}
.use{white-space:nowrap;color:var(--clash);font-weight:600}
.contents{margin-top:2.2rem;border-top:1px solid var(--hair);padding-top:.8rem}
.contents ol{margin:0;padding:0;list-style:none;columns:3 14rem;column-gap:2rem}
.contents li{padding:.12rem 0;break-inside:avoid}
.verdict{white-space:nowrap;display:inline-flex;align-items:center;gap:.4rem}
.verdict.clashes{color:var(--clash);font-weight:600}
.verdict.open{color:var(--open)}
.verdict.no-data,.verdict.not-applicable{color:var(--quiet)}
.mark{flex:none;width:30px;height:10px}
.joint{margin-top:1.6rem;padding-top:.9rem;border-top:1px solid var(--ink)}
.joint header{display:grid;grid-template-columns:1fr auto;column-gap:1.5rem;align-items:baseline}
.joint h3{font-size:1.35rem;font-weight:500}
.against{color:var(--quiet);font-weight:300}
.big{font-size:1.9rem;font-weight:300;line-height:1;white-space:nowrap;font-variant-numeric:tabular-nums}
.big .quiet{font-size:.95rem}
.joint.clashes .big data{color:var(--clash)}
.facts{grid-column:1/-1;color:var(--quiet);font-size:.92rem;margin-top:.25rem}
.sentence{font-size:1.08rem;max-width:50rem;margin:.6rem 0 .3rem}
.further{max-width:50rem;margin:.25rem 0}
.evidence{display:grid;grid-template-columns:minmax(0,20fr) minmax(0,23fr);gap:1.6rem;margin:.9rem 0 .4rem;align-items:start}
.strips{display:grid;gap:.7rem}
.strips svg,.spectra svg{width:100%}
h4{font-weight:600;font-size:1.05rem;line-height:1.25;margin:0}
section>h3{margin:1.6rem 0 .4rem}
.lots{margin:1.2rem 0 1.6rem}
.lots svg,.forecast svg,.pair svg{width:100%}
.lots .scale,.lots .swatch{width:auto}
.lots figure{margin:.7rem 0 .3rem}
.pair{display:grid;grid-template-columns:repeat(2,minmax(0,1fr));gap:1.2rem}
.pair figcaption{padding:0 0 .35rem}
.notes{padding:.55rem .8rem .55rem 1.9rem;margin:.6rem 0;border:1px solid var(--faint);border-width:1px 0}
.caution{padding-left:1.15rem;margin:.6rem 0;max-width:50rem;font-size:.95rem;color:var(--quiet)}
.caution li{margin:.2rem 0}
.judged{font-size:.92rem;margin:.7rem 0 0;max-width:54rem}
table{width:100%;border-collapse:collapse;margin:1rem 0 .4rem;font-size:.88rem;line-height:1.35;font-variant-numeric:tabular-nums}
caption{caption-side:top;text-align:left;font-weight:600;font-size:.92rem;padding-bottom:.3rem}
th,td{text-align:left;vertical-align:top;padding:.3rem .7rem .3rem 0;border-top:1px solid var(--hair);font-weight:400;min-width:2.2rem}
thead th{font-weight:600;color:var(--quiet);border-top:1px solid var(--ink);vertical-align:bottom;font-size:.82rem}
tbody tr:last-child>*{border-bottom:1px solid var(--hair)}
th:last-child,td:last-child{padding-right:0}
.number{text-align:right;white-space:nowrap}
.number+:not(.number){padding-left:.45rem}
.small{font-size:.85rem;line-height:1.35}
caption .quiet{font-size:.95em}
.wide{min-width:10rem}
.word{min-width:5rem}
.scale{display:inline-block;width:92px;height:12px;margin-right:.4rem;vertical-align:-1px;max-width:none}
.swatch{display:inline-block;width:14px;height:14px;margin-right:.5rem;vertical-align:-2px;max-width:none}
.swatch.pair{width:28px}
code{font:.82em/1.3 ui-monospace,"SFMono-Regular",Menlo,Consolas,"DejaVu Sans Mono",monospace}
.no-source{font-style:normal;color:var(--quiet);border-bottom:1px dotted #767676}
.verdict+.steady{display:block}
.sheet+.sheet{margin-top:4rem;border-top:2px solid var(--ink);padding-top:2rem}
.sign td,.sign th{height:3rem}
.sign td+td{border-left:1px solid var(--hair);padding-left:.6rem}
details>summary{cursor:pointer;padding:.3rem 0;text-decoration:underline;text-underline-offset:3px;text-decoration-color:#8a8a8a}
.sample{-webkit-print-color-adjust:exact;print-color-adjust:exact;forced-color-adjust:none}
@media screen and (max-width:52rem){
main{padding:1.4rem 1.1rem 3rem}
h1{font-size:2.5rem}
.start,.evidence,.pair,.terms>div{grid-template-columns:minmax(0,1fr);gap:.5rem}
.terms>div{gap:.1rem}
table{display:block;overflow-x:auto}
caption{display:block;position:sticky;left:0}
td:not(.number),tbody th{min-width:6.5rem}
.wide,td.wide{min-width:17rem}
.listed{position:relative;overflow:visible}
.listed caption,.listed tbody{display:block}
.listed thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.listed tr{display:flex;flex-wrap:wrap;gap:.1rem .9rem;align-items:baseline;padding:.5rem 0;border-top:1px solid var(--hair)}
.listed tbody :is(th,td){display:block;border:0;padding:0;min-width:0;max-width:100%;text-align:left;white-space:normal}
.listed tbody th{flex:1 1 100%;font-weight:600}
.listed td.wide{flex:1 1 100%}
.listed .number+*{padding-left:0}
.listed td:empty{display:none}
.listed td[data-name]::before{content:attr(data-name) " ";color:var(--quiet)}
.lots>figure,.forecast{overflow-x:auto}
.lots>figure>svg,.forecast>svg{width:36rem;max-width:none}
.band:not(.slim){display:none}
.band.slim{display:block}
.sign :is(th,td){min-width:0}
}
@page{${paper === undefined ? '' : `size:${paper} portrait;`}margin:15mm 15mm 18mm;
@bottom-left{content:${cssString(foot)};font:8pt "Source Sans 3",sans-serif;color:#4d4d4d;vertical-align:top;padding-top:4mm;max-width:140mm;overflow:hidden}
@bottom-right{content:counter(page) " of " counter(pages);font:8pt "Source Sans 3",sans-serif;color:#4d4d4d;vertical-align:top;padding-top:4mm}}
@media print{
html{font-size:9.4pt;background:#fff}
main{max-width:none;padding:0}
*{-webkit-print-color-adjust:exact;print-color-adjust:exact}
h1{font-size:27pt}
h1.long{font-size:17pt}
.front{font-size:.94em}
.found li{padding:.3rem 0}
.steps li{padding:.08rem 0}
.start{gap:1.2rem}
section{margin-top:9mm}
table{margin:.7rem 0 .3rem}
.joint table{margin:.5rem 0 .2rem}
.joint{margin-top:1.2rem}
.evidence{margin:.4rem 0 .1rem}
.sentence,.further,.judged,.caution,.lead{max-width:none}
.notes{margin:.3rem 0;padding:.3rem .8rem .3rem 1.7rem}
.notes+.notes{border-top:0;margin-top:-.3rem}
.judged{margin-top:.45rem}
.caution{margin:.4rem 0}
.joint,figure,tr,.found li,.steps li,.terms>div,.notes,p,li,#sign-off,#limits{break-inside:avoid}
h2,h3,h4,caption,thead,.lead,.joint header,.sentence{break-after:avoid}
thead{display:table-header-group}
p,li{orphans:3;widows:3}
a{text-decoration:none}
summary{display:none}
details::details-content{content-visibility:visible;display:block;height:auto}
.wide{min-width:0}
.contents{break-inside:avoid;margin-top:2mm;padding-top:1.5mm;font-size:.9em}
.contents ol{columns:auto}
.contents li{display:inline}
.contents li+li::before{content:" · "}
.map svg{max-height:66mm}
.map figcaption{padding-top:.2rem}
.short{margin-top:3mm}
.short-terms>div{padding:.28rem 0;grid-template-columns:6.6rem 1fr;gap:1rem}
.short p{line-height:1.35}
.band{margin:2mm 0 3mm}
th,td{padding:.22rem .5rem .22rem 0}
.compact th,.compact td{padding-top:.1rem;padding-bottom:.1rem}
}
`;
