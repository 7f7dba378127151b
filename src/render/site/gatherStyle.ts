/** The sheet on which parts lie, and the list for shopping. */
export const gatherStyle = `
.bag{list-style:none;margin:0;padding:0}
.content .bag{max-width:none;padding:0}
.content .bag>li{position:relative;display:grid;grid-template-columns:var(--margin) minmax(0,1fr);column-gap:var(--gap);align-items:center;margin:0;padding:.9rem 0;border-bottom:1px solid var(--hair)}
.content>h3:has(+.bag){margin:2.5rem 0 .6rem;font-size:1.35rem}
.bag .drawn{position:relative;min-height:1.5rem}
.bag .drawn::before{content:"";position:absolute;inset-inline:calc(-1*var(--lead)) 0;top:50%;border-top:1px solid var(--hair)}
.bag .undrawn::before{inset-inline-end:70%}
.drawing{position:relative;display:block;width:100%;height:auto;overflow:visible;direction:ltr;--stroke:.95}
.body{fill:var(--lit);stroke:var(--ink);stroke-width:var(--stroke);stroke-linejoin:round}
.skin{fill:var(--lit);stroke:var(--ink);stroke-width:var(--stroke);stroke-linejoin:round}
@media screen and (prefers-color-scheme:dark){.skin{fill:var(--pencil)}}
.edge{fill:none;stroke:var(--ink);stroke-width:var(--stroke);stroke-linecap:round;stroke-linejoin:round}
.mark{fill:var(--ink)}
.gap{fill:none;stroke:var(--lit);stroke-width:1.2}
.holes{fill:none;stroke:var(--line);stroke-width:2;stroke-linecap:round;stroke-dasharray:0 6}
.band{stroke:var(--mark);stroke-width:.5}
.open-band{fill:none;stroke:var(--mark);stroke-width:1;stroke-dasharray:2 2}
.print,.hint{font:500 12px var(--meter);fill:var(--ink);text-anchor:middle;dominant-baseline:central}
.bag .what{display:flex;align-items:baseline;gap:.2rem .7rem;margin:0;max-width:none}
.bag .what .tick-box{align-self:center;margin:0}
.bag .name{min-width:0;font-size:1.15rem}
.bag .value{font:500 1.12em/1.2 var(--meter);white-space:nowrap}
.bag .refs{flex:none;color:var(--brass);max-width:8rem}
.bag .much{margin-inline-start:auto;font:500 1.35rem/1.2 var(--meter);white-space:nowrap;color:var(--pencil)}
.content .bag p{margin:.2rem 0 0;max-width:var(--measure)}
.content .bag p.what{margin:0;max-width:none}
.bag .usual{font-style:italic}
.bag .ticked .name,.bag .ticked .refs,.bag .ticked .value{color:var(--pencil)}
.bag .ticked .drawing{opacity:.45}
.key{color:var(--pencil)}
.bag :is(.refs,.value){unicode-bidi:isolate;direction:ltr}
[dir=rtl] :is(h1,h2,h3,label,.name,.detail,.signs,.key,.purpose,.way p,.tally,.take){unicode-bidi:plaintext;text-align:right}
.errand{margin-top:2.25rem}
.errand h3{font-size:1.35rem;margin-bottom:.4rem}
.errand td:first-child{width:7rem;text-align:start;font-size:1.15rem}
.errand .name a{color:inherit;text-decoration-color:var(--line)}
.errand :is(th,td){overflow-wrap:anywhere}
.errand .number{white-space:nowrap}
.errand td.number:first-child{white-space:normal}
.content .sum{margin:.7rem 0 0;max-width:none;text-align:end}
.content .sum.whole{margin-top:2.5rem;padding-top:.8rem;border-top:2px solid var(--ink);white-space:normal;font-size:1.25rem}
.builds[hidden],.errand[hidden],.errand tr[hidden]{display:none}
.builds input{max-width:7rem;font:500 1.9rem/1.2 var(--meter)}
@media print,(min-width:60rem){
#bag{display:block}
#bag>.content{margin-top:1.5rem}
#bag .key{margin-inline-start:calc(var(--margin) + var(--gap))}
}
@media screen and (max-width:42rem){
.content .bag>li{grid-template-columns:6.75rem minmax(0,1fr);column-gap:.9rem;align-items:start}
.bag .drawn{margin-top:.2rem}
.content .bag>li:has(>.undrawn){grid-template-columns:minmax(0,1fr)}
.bag .undrawn{display:none}
.bag .what{flex-wrap:wrap}
.bag .name{order:1;flex-basis:100%}
.drawing{--stroke:1.8}
.print,.hint{font-size:18px}
.errand td:first-child{width:4.5rem}
}
@media print{
#state{display:block}
.bag>li{padding:1.6mm 0}
.drawing{max-height:15mm;--stroke:1.3}
.bag .tick-box{border-color:var(--ink)}
#shopping{break-before:page}
.take{display:none}
.band,.mark,.body{print-color-adjust:exact}
}
`;
