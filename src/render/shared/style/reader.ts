/** What a reader does on the page: ticks, walks, enlarges, looks up, unfolds. */
export const readerStyle = `
button{font:500 1.0625rem/1.2 var(--meter);color:var(--ink);background:none;border:1px solid var(--line);border-radius:0;padding:.7rem 1.1rem;min-height:2.75rem;cursor:pointer}
button:hover{border-color:var(--ink)}
button:active:not(:disabled){background:color-mix(in srgb,var(--glint) 22%,transparent)}
:is(button,a,label,summary,.tick-box){-webkit-tap-highlight-color:transparent}
button:disabled{color:var(--pencil);border-color:var(--hair);cursor:default}
.enter{margin-top:1.75rem}
.tick-box{appearance:none;width:1.1rem;height:1.1rem;margin:0 .6rem 0 0;margin-inline:0 .6rem;border:1px solid var(--line);vertical-align:-.12rem;cursor:pointer;flex:none;position:relative}
.tick-box::after{content:"";position:absolute;inset:-.75rem}
.tick-box:checked{background:linear-gradient(to bottom right,transparent calc(50% - 1px),var(--glint) calc(50% - 1px) calc(50% + 1px),transparent calc(50% + 1px)),linear-gradient(to bottom left,transparent calc(50% - 1px),var(--glint) calc(50% - 1px) calc(50% + 1px),transparent calc(50% + 1px))}
.tick{display:flex;align-items:center;padding:.4rem 0;cursor:pointer}
.tools li:has(>.tick-box){position:relative;padding-inline-start:1.75rem}
.tools .tick-box{position:absolute;inset-inline-start:0;top:.75rem;margin:0}
.parts .tick-box{margin-bottom:.2rem}
@media (max-width:30rem){.parts .tick-box{display:block;margin-bottom:.4rem}}
.tally{font-family:var(--meter);color:var(--pencil);margin:0 0 1rem}
tr.ticked .name,.tools li.ticked .name,.course li.ticked .name{color:var(--pencil)}
.course li.ticked{border-bottom-color:var(--glint)}

.ask{margin:0 0 1.5rem}
.ask label{display:block;font:500 1rem/1.3 var(--meter);color:var(--pencil)}
.ask input{font:1.25rem/1.3 var(--text);color:var(--ink);background:none;border:0;border-bottom:1px solid var(--ink);border-radius:0;width:min(100%,26rem);padding:.4rem 0;margin:.2rem 0 .5rem}
.troubles{margin:0;max-width:var(--measure)}
.troubles>div{border-bottom:1px solid var(--hair);padding:.8rem 0}
.troubles dt{font-weight:600}
.troubles dd{margin:.25rem 0 0}
.troubles .reading{font-size:1.15rem}
.more{margin:1.25rem 0;max-width:var(--measure)}
.more summary{padding:.35rem 0;color:var(--pencil)}
.more dl{margin:.5rem 0 0}
.more dl>div{margin:.5rem 0}
.more dt{font-family:var(--meter)}
.more dd{margin:0}
.erratum{margin:1.5rem 0;padding:.9rem 0 0;border-top:1px dashed var(--ink);max-width:var(--measure)}
.content .erratum p{margin:.3rem 0 0}
.erratum ins{text-decoration:none}
.report{color:var(--pencil)}

.q{color:var(--pencil);font-style:italic}
.k{font-weight:600}
.s{color:var(--brass)}

.enlarge{display:block;cursor:zoom-in;position:relative}
.callouts{position:absolute;inset:0;width:100%;height:100%}
.callouts g{fill:none;stroke-linecap:round;stroke-linejoin:round}
.callout-ground{stroke:var(--under);stroke-width:11}
.callout-line{stroke:var(--over);stroke-width:5}
.callout-disc{fill:var(--under);stroke:var(--over);stroke-width:3}
.callout-number,.callout-label{font:600 36px var(--meter);fill:var(--over);text-anchor:middle}
.callout-label.ground{stroke:var(--under);stroke-width:9;stroke-linejoin:round}
.callout-words ol{margin:.5rem 0 0;font-size:1rem}
.enlarged{width:100vw;height:100vh;max-width:none;max-height:none;margin:0;padding:0;border:0;color:var(--ink);background:var(--paper)}
.enlarged[open]{display:grid;grid-template-rows:auto minmax(0,1fr) auto}
.enlarged .close{justify-self:end;border-width:0 0 1px}
.sheet{border:0;padding:0;overflow:auto;cursor:zoom-in;min-height:0}
.sheet img{width:100%;height:100%;object-fit:contain;display:block}
.full .sheet{cursor:zoom-out}
.full .sheet img{width:auto;height:auto;max-width:none}
.enlarged p{margin:0;padding:.8rem 1.25rem;font-size:1rem;text-align:center}

.stride{position:fixed;inset:auto 0 0;display:flex;align-items:stretch;background:var(--lit);border-top:1px solid var(--line);z-index:2}
.stride[hidden]{display:none}
.stride>button{flex:1;border:0;min-height:4.25rem;font-size:1.35rem}
.stride>.on:not(:disabled){color:var(--brass)}
.stride div{display:flex;flex-direction:column;justify-content:center;text-align:center;padding:.3rem .5rem}
.stride p{margin:0;font:500 1.0625rem/1.2 var(--meter)}
.stride .leave{border:0;padding:.3rem;min-height:2rem;color:var(--pencil);font-size:1rem;text-decoration:underline;text-underline-offset:.2em;text-decoration-thickness:1px}
.walking body{padding-bottom:4.5rem}
.walking :is(header,footer,.promise,main>*:not(.work),.work>*:not(.now)){display:none}
.walking .work{margin-top:1.5rem}
.walking .step{margin-top:0}
.walking .onward a:not(.report){display:none}
.step :is(h3,h4,h5,h6):focus{outline:none}
@media print{button,.stride,.ask,.tally,.enlarged,.tick{display:none}.tick-box{break-inside:avoid}}
`;
