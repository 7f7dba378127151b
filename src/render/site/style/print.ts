/** On paper: no ways to click, nothing torn apart, listings open. */
export const printStyle = `
@page{margin:16mm 15mm 18mm}
@media print{
body{font-size:10.5pt;line-height:1.45;background:none}
header,main,footer{max-width:none;padding:0}
.skip,.onward,.way{display:none}
h1{font-size:34pt}
.opening{padding-top:0}
.cover img{max-height:110mm}
.picture img{max-height:105mm}
.section,.work{margin-top:12mm}
.step{margin-top:10mm}
h2,h3,h4,h5,h6{break-after:avoid}
figure,tr,li,.caution,.mistake,.outcome,.missing{break-inside:avoid}
.line{break-after:avoid}
a{color:inherit;text-decoration:none}
.content p a[href^="http"]::after{content:" (" attr(href) ")";font-size:.85em;overflow-wrap:anywhere}
pre{max-height:none;white-space:pre-wrap;overflow-wrap:anywhere;font-size:8pt}
details::details-content{content-visibility:visible;display:block;height:auto}
summary{display:none}
}
`;
