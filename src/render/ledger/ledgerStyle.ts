/** The account: its columns, and what is pinned to it. */
export const ledgerStyle = `
.opening .promise{margin-left:0}
.stops{font-size:1.25rem}
.hands{max-width:var(--measure)}
.hands th[scope=row]{font-weight:400}
.hands .number{width:5.5rem}
@media (max-width:30rem){.hands .number{width:3.5rem}}
.hands td{font-family:var(--meter);font-variant-numeric:tabular-nums lining-nums}
.hands .detail{display:inline}
.stop{max-width:var(--measure);margin:0 0 2rem;padding:.9rem 0 .9rem 1.25rem;border-left:2px solid var(--ink)}
.stop-halts{border-left-width:6px}
.stop-slows{border-left-width:3px}
.stop-tidy{border-left-width:1px}
.content .stop p{margin:.3rem 0}
.content blockquote.witness{margin:.6rem 0;padding-left:.9rem;text-indent:0;border-left:1px solid var(--hair)}
.witness .detail{font-style:normal}
.step .caution{max-width:var(--measure)}
.step{margin-top:clamp(2.5rem,5vw,4rem)}
.needs p:first-child{margin-top:0}
.needs .label{margin-top:.8rem}
@media print{
main .step{display:block;break-inside:auto;margin-top:6mm}
main .step h3{display:flex;font-size:15pt;break-after:avoid}
main .needs{float:left;width:var(--margin);margin-top:2mm;break-inside:avoid}
main .step>.content{margin:2mm 0 0 calc(var(--margin) + var(--gap))}
main .step::after{content:"";display:block;clear:both}
.stop,.hands tr,.joins li{break-inside:avoid}
main .joins{break-inside:auto}
}
`;
