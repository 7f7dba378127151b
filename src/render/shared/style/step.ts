/** The line of work and the steps along it. */
export const stepStyle = `
.line{display:block;overflow:visible;width:calc(100% + var(--lead));margin-inline-start:calc(-1*var(--lead))}
[dir=rtl] .line{transform:scaleX(-1)}
[dir=rtl] .line text{transform:scaleX(-1);transform-box:fill-box;transform-origin:center}
.line-junction{fill:var(--line)}
.line-base{stroke:var(--line);stroke-width:1}
.line-tick{stroke:var(--line);stroke-width:1}
.line-live{stroke:var(--line);stroke-width:1}
.line-rest{stroke:var(--line);stroke-width:1;fill:none}
.line-done{stroke:var(--glint);stroke-width:3}
.line-needle{fill:var(--glint)}
.line-terminal{fill:var(--paper);stroke:var(--line);stroke-width:1.25}
.line-number{font:500 15px var(--meter);fill:var(--ink)}

.course{margin-top:1.5rem}
.scale{margin:.4rem 0 0;font-size:1rem;color:var(--pencil)}
.course ol{list-style:none;margin:2rem 0 0;padding:0;columns:24rem 2;column-gap:var(--gap)}
.course li{display:flex;justify-content:space-between;gap:1rem;break-inside:avoid;border-bottom:1px solid var(--hair);align-items:baseline}
.course a{min-width:0;display:flex;gap:.9rem;align-items:baseline;padding:.5rem 0;color:inherit;text-decoration:none;flex:1}
.course a .figure{min-width:1.6em;font-size:1.35rem;color:var(--brass)}
.course a:hover .name{text-decoration:underline;text-decoration-thickness:1px;text-underline-offset:.18em}
.course li>.figure{color:var(--pencil);white-space:nowrap}

.step{margin-top:clamp(4rem,9vw,7rem)}
.step>:is(h3,h4,h5,h6){font-size:clamp(1.7rem,4vw,2.6rem);margin-top:.6rem;display:flex;column-gap:1.1rem;align-items:baseline}
.numeral{font-size:1.6em;line-height:1;font-variant-numeric:tabular-nums lining-nums;color:var(--brass);font-weight:400}
.needs{margin-top:1.4rem;font-size:1.0625rem;line-height:1.45}
.needs ul{list-style:none;margin:.3rem 0 .8rem;padding:0}
.needs li{padding:.3rem 0}
.needs p{margin:.25rem 0;color:var(--pencil)}
.needs a{color:inherit;text-decoration-color:var(--line)}
.step>.content{margin-top:1.5rem}
.section.inner{margin-top:2.5rem}
.inner>:only-child{grid-column:1/-1}
.inner:has(>:only-child){margin-top:clamp(3rem,7vw,5rem)}
.inner:has(>:only-child)+.step{margin-top:1.75rem}
.inner>h3{font-size:clamp(1.4rem,2.6vw,1.8rem)}
.inner>h4{font-size:1.35rem}

@media print,(min-width:60rem){
.step{display:grid;grid-template-columns:var(--margin) minmax(0,1fr);column-gap:var(--gap)}
.step>:is(h3,h4,h5,h6){column-gap:var(--gap)}
.step>.line,.step>:is(h3,h4,h5,h6){grid-column:1/-1}
.step>:is(h3,h4,h5,h6){display:grid;grid-template-columns:subgrid;align-items:baseline}
.needs{grid-column:1}
.step>.content{grid-column:2}

}
.joins,.outcome{max-width:var(--measure);margin:2.25rem 0}
.content .joins ul{list-style:none;padding:0;margin:.4rem 0}
.joins li,.measure{display:flex;align-items:center;gap:.6rem}
.point{position:relative;white-space:nowrap;color:inherit}
.point.long{white-space:normal;overflow-wrap:anywhere;min-width:30%;flex:0 1 auto}
.wire{flex:1;min-width:1.4rem;height:0;border-top:1px solid var(--line);position:relative}
.wire.from::before,.wire.to::after{content:"";position:absolute;top:-4px;width:7px;height:7px;border:1px solid var(--line);border-radius:50%;background:var(--paper)}
.wire.from::before{inset-inline-start:0}
.wire.to::after{inset-inline-end:0}
.wire-note{font-size:1rem;color:var(--pencil)}
.outcome .expect{margin:.4rem 0}
.measure{margin:.6rem 0}
.measure .reading{font-size:1.9rem;line-height:1.1}
.onward a{padding:.4rem 0}
.onward{display:flex;flex-wrap:wrap;gap:.5rem 2rem;margin-top:2.5rem;font-family:var(--meter)}
.onward .next{margin-inline-start:auto;font-size:1.25rem}
.file{margin-top:2rem}
.file h2{font-size:1.05rem;overflow-wrap:anywhere}
summary{cursor:pointer;font-family:var(--meter)}
`;
