/** The page as a surface under one lamp: its grid, its light, its opening and its end. */
export const pageStyle = `
:root{
--text:"Iowan Old Style","Palatino Linotype","URW Palladio L","P052","Noto Serif",serif;
--meter:"Bahnschrift","DIN Alternate","Avenir Next Condensed","Roboto Condensed","Liberation Sans Narrow","Arial Narrow",sans-serif;
--code:ui-monospace,"Cascadia Mono","SF Mono","Roboto Mono","Liberation Mono",monospace;
--lead:clamp(.9rem,2.4vw,2rem);
--margin:14rem;
--gap:clamp(1.5rem,4vw,4rem);
--measure:38rem;
}
*{box-sizing:border-box}
html{scroll-padding-top:1rem;-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{
margin:0;color:var(--ink);background:var(--paper);
font:1.125rem/1.6 var(--text);
font-variant-numeric:lining-nums;
overflow-wrap:break-word;
}
body::before{
content:"";position:fixed;inset:0;z-index:-1;
background:radial-gradient(ellipse 62rem 110vh at 45% 0,var(--lit) 35%,var(--paper));
}
header,main,footer{display:flow-root;position:relative;max-width:75rem;margin:0 auto;padding:0;padding-inline:calc(clamp(.5rem,3vw,2rem) + var(--lead)) clamp(1rem,4vw,3rem)}
header::before,main::before{
content:"";position:absolute;top:0;bottom:0;inset-inline-start:clamp(.5rem,3vw,2rem);border-inline-start:1px solid var(--line);
}
header::before{top:clamp(2.8rem,7.6vw,6.6rem)}
header::after{content:"";position:absolute;top:clamp(2.8rem,7.6vw,6.6rem);inset-inline-start:calc(clamp(.5rem,3vw,2rem) - 3.5px);width:8px;height:8px;border:1px solid var(--line);border-radius:50%;background:var(--lit)}
a{color:var(--brass);text-decoration-thickness:1px;text-underline-offset:.18em}
a:hover{text-decoration-thickness:2px}
:focus-visible{outline:2px solid var(--glint);outline-offset:3px}
:target{scroll-margin-top:1rem}
.skip{position:absolute;inset-inline-start:-100rem}
.skip:focus{inset-inline-start:1rem;top:1rem;padding:.5rem 1rem;background:var(--paper);z-index:1}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}

.opening{padding-top:clamp(2.5rem,7vw,6rem)}
h1{font:500 clamp(2.5rem,8vw,5.5rem)/1.02 var(--meter);letter-spacing:-.015em;margin:0;max-width:16ch;text-wrap:balance}
.purpose{font-size:clamp(1.25rem,2.2vw,1.6rem);line-height:1.45;max-width:36rem;margin:1.5rem 0 0;text-wrap:pretty}
.cover{margin:clamp(2rem,5vw,4rem) 0 0}
.cover img{display:block;width:100%;height:auto;max-height:80vh;object-fit:cover}
.promise{padding-top:clamp(2rem,4vw,3rem);max-width:var(--measure)}
.promise strong{font:500 1.12em/1 var(--meter);white-space:nowrap}
.promise p{margin:0 0 1em}
.way{font-size:1.25rem;line-height:1.6}

footer{padding-top:2rem;padding-bottom:5rem;color:var(--pencil);font-size:1rem}
footer p{margin:.25rem 0}

h1,h2,h3,h4,h5,h6{overflow-wrap:anywhere;min-width:0}
h2,h3,h4,h5,h6{font-family:var(--meter);font-weight:500;line-height:1.15;margin:0;text-wrap:balance}
.section,.work{margin-top:clamp(3.5rem,8vw,6rem)}
.section.bare{margin-top:1rem}
.section>h2,.work>h2{font-size:clamp(1.6rem,3vw,2.1rem);margin-top:1.1rem}
.section>.content{margin-top:1.25rem}
.content>:first-child{margin-top:0}
@media print,(min-width:60rem){
.section{display:grid;grid-template-columns:var(--margin) minmax(0,1fr);column-gap:var(--gap)}
.section>.line{grid-column:1/-1}
.section>.content{margin-top:1.4rem;grid-column:2}
.promise{margin-inline-start:calc(var(--margin) + var(--gap))}
}
`;
