/** Tables and lists of things. */
export const tableStyle = `
.scroll{overflow-x:auto}
table{border-collapse:collapse;width:100%;font-size:1.0625rem;line-height:1.4}
th,td{text-align:start;vertical-align:baseline;padding:.55rem 1rem .55rem 0;font-weight:400}
th:last-child,td:last-child{padding-inline-end:0}
thead th{font:500 1rem/1.3 var(--meter);color:var(--pencil);border-bottom:1px solid var(--ink)}
tbody tr{border-bottom:1px solid var(--hair)}
.align-right,.number{text-align:end}
.align-center{text-align:center}
.group th{padding-top:1.5rem;font:500 1.05rem/1.3 var(--meter)}
.number{white-space:nowrap}
.whole{display:inline-block}
.refs.long{overflow-wrap:anywhere;min-width:5rem}
.name{display:block;overflow-wrap:anywhere;min-width:0}
.detail{display:block;overflow-wrap:anywhere;min-width:0;font-size:.95rem;color:var(--pencil)}
th.refs,td.refs{font-size:1.08em}
.not-fitted .name{text-decoration:line-through}
tr:target,.tools li:target{background:linear-gradient(90deg,color-mix(in srgb,var(--glint) 22%,transparent),transparent)}
.tools{list-style:none;padding:0;margin:0;columns:18rem 2;column-gap:var(--gap)}
.content>.tools{padding-inline-start:0;max-width:none}
.tools li{break-inside:avoid;padding:.45rem 0;border-bottom:1px solid var(--hair)}
.content .tools li{margin:0}
@media (max-width:30rem){th,td{padding-inline-end:.6rem}.number{white-space:normal}}
`;
