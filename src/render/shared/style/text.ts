/** The maker's text, pictures, cautions and notes. */
export const textStyle = `
.content>p,.content>ul,.content>ol,.content>blockquote,.content>dl,.content>.caution,.content>.mistake{max-width:var(--measure)}
.content p,.content ul,.content ol,.content blockquote,.content pre{margin:1em 0}
.content ul,.content ol{padding-inline-start:1.4em}
.content li{margin:.35em 0}
.content li::marker{color:var(--pencil)}
li.open,li.done{list-style:none;position:relative}
li.open::before,li.done::before{content:"";position:absolute;inset-inline-start:-1.3em;top:.5em;width:.6em;height:.6em;border:1px solid var(--line)}
li.done::before{background:var(--line)}
.content>h3,.content>h4,.content>h5,.content>h6{margin:1.6em 0 .5em}
blockquote{margin-inline-start:0;padding-inline-start:1.4em;text-indent:-.6em;font-style:italic}
hr{border:0;border-top:1px solid var(--hair);margin:2em 0;max-width:6rem}
code,pre{font-family:var(--code);font-size:.84em;font-variant-ligatures:none}
pre{line-height:1.5;overflow:auto;padding:.9rem 0;border-top:1px solid var(--hair);border-bottom:1px solid var(--hair);tab-size:4;max-height:75vh}
pre code{font-size:.92em}
figure{margin:1.75rem 0}
.picture img{display:block;max-width:100%;height:auto;max-height:90vh;object-fit:contain;object-position:0 0}
:root[dir=rtl] .picture img{object-position:100% 0}
figcaption{font-size:1rem;line-height:1.45;color:var(--pencil);margin-top:.6rem;max-width:var(--measure)}
:where([dir=rtl]) :where(p,li,dt,dd,.detail,summary,label){unicode-bidi:plaintext;text-align:right}
.missing{border:1px dashed var(--line);padding:1.25rem 1.5rem;font-size:1rem}
.content p,.content li{text-wrap:pretty}
.label{font:500 1rem/1.3 var(--meter);color:var(--pencil);margin:0}
.refs,.figure,.number,.reading,.point,time{font-family:var(--meter);font-variant-numeric:tabular-nums lining-nums}

.caution{margin:1.5rem 0;padding:.9rem 0 0;border-top:2px solid var(--ink)}
.caution p{margin:0}
.signal{display:flex;align-items:center;gap:.5rem;font:600 1.15rem/1.2 var(--meter);letter-spacing:.06em}
.signal strong{font-weight:600}
.caution .signal+*{margin:.3rem 0 0}
.caution ul{padding-inline-start:1.1em}
.caution-danger{border-top-width:6px}
.caution-warning{border-top-width:4px}
.caution-notice{border-top-width:1px}
.alert{flex:none}
.alert-field{fill:var(--field);stroke:var(--ink);stroke-width:1.2;stroke-linejoin:round}
.stock{position:absolute}
.caution-danger{--field:var(--red);--sign:var(--onRed)}
.caution-warning{--field:var(--orange)}
.caution-caution{--field:var(--yellow)}
.alert-mark{fill:var(--sign,var(--mark))}
.irreversible{font-weight:600}

.mistake{margin:2rem 0;font-style:italic;padding-inline-start:1.4rem;border-inline-start:1px dashed var(--line)}
.mistake p{margin:0}
.mistake .content p,.content li{text-wrap:pretty}
.label{font-style:normal;margin-bottom:.2rem}
`;
