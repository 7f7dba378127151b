/** On paper: no ways to click, nothing torn apart, listings open, the line of work as on the screen. */
export const printStyle = `
@page{margin:15mm 12mm 17mm}
@media print{
:root{--lead:5mm;--margin:36mm;--gap:7mm;--measure:none}
html{font-size:8.6pt}
body::before,.skip,.onward,.way,summary{display:none}
header,main,footer{max-width:none;padding:0;padding-inline:calc(var(--lead) + 2mm) 2mm}
header::before,main::before{inset-inline-start:2mm}
header::before{top:2mm}
header::after{top:2mm;inset-inline-start:calc(2mm - 3.5px)}
h1{font-size:32pt}
.opening{padding-top:0}
.cover{margin-top:8mm}
.cover img{max-height:120mm}
.picture img{max-height:92mm}
.section,.work{margin-top:11mm}
.section.bare{margin-top:2mm}
.step{margin-top:9mm}
h2,h3,h4,h5,h6,.line,.label{break-after:avoid}
.content>p:has(+table){break-after:avoid}
.step,figure,tr,li,p,.caution,.mistake,.outcome,.joins,.missing,.needs{break-inside:avoid}
.outcome,figcaption,.callout-words{break-before:avoid}
thead{display:table-header-group}
p,li{orphans:3;widows:3}
a{color:inherit;text-decoration:none}
.content p a[href^="http"]::after{content:" (" attr(href) ")";font-size:.85em;overflow-wrap:anywhere}
pre{max-height:none;white-space:pre-wrap;overflow-wrap:anywhere;font-size:.8em;overflow:visible}
details::details-content{content-visibility:visible;display:block;height:auto}
}
`;
