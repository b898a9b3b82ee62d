import { PitchDetector } from 'pitchy';
import { attemptOf } from './tests/bench/attempts.ts';
import { renderCached } from './tests/bench/render-cached.ts';
import { otherSound } from './tests/support/other-sounds.ts';
import { Resampler } from './src/engine/listen/audio/resample.ts';
const L=1024; const det=PitchDetector.forFloat64Array(L);
function rate(ch:Float32Array,hop=2048){const out:number[]=[]; const rs=new Resampler(44100,22050,(b,l)=>{for(let i=0;i<l;i++)out.push(b[i]!)}); rs.push(Float64Array.from(ch),ch.length); const s=Float64Array.from(out);
 const times:number[]=[];
 for(let e=8192;e<s.length;e+=hop){let prev:number|null=null,dir=0,ok=true; for(let k=0;k<3;k++){const w=s.subarray(e-(3-k)*L,e-(2-k)*L); let p=0; for(const x of w)p+=x*x; if(p<1e-6*L){ok=false;break;} const [f,c]=det.findPitch(Float64Array.from(w),22050); if(!(c>0.9&&f>85&&f<500)){ok=false;break;} const st=12*Math.log2(f); if(prev!==null){const g=st-prev; if(Math.abs(g)<0.12||Math.abs(g)>0.9||g*dir<0){ok=false;break;} dir=g;} prev=st;} if(ok)times.push(e/22050);}
 return {n:times.length,sec:s.length/22050,times};}
for(const s of [1,2,3,4]){const r=rate(otherSound('speech',20,s).channels[0]!); const gaps=[0,...r.times,r.sec].map((t,i,a)=>i?t-a[i-1]!:0); console.log('speech',s,(r.n/r.sec).toFixed(2),'/s longest without',Math.max(...gaps).toFixed(1));}
for(const set of ['standard','chords','together','hard'] as const){let n=0,sec=0; const at:string[]=[]; for(let i=0;i<15;i++){const {spec}=attemptOf(set,'dev',i); const r=await renderCached(spec); const q=rate(r.channels.at(-1)!); n+=q.n; sec+=q.sec; if(q.n) at.push(`${i}:${q.n} ${spec.home!.noises!.map(x=>x.kind+Math.round(x.belowDb)).join('+')}`);} console.log(set,(n/sec).toFixed(3),'/s',at.join('; '));}
