import { attemptOf } from './tests/bench/attempts.ts';
import { renderCached } from './tests/bench/render-cached.ts';
import { otherSound } from './tests/support/other-sounds.ts';
import { Resampler } from './src/engine/listen/audio/resample.ts';
import { SampleHistory } from './src/engine/listen/audio/index.ts';
import { createNetworkListener, ActiveLevel } from './src/engine/listen/network/index.ts';
import { Judge } from './src/engine/live/judge.ts';
import { listen } from './src/engine/listen/index.ts';
const show=(name:string,ch:Float32Array,cents:number)=>{ 
 const out:number[]=[]; const rs=new Resampler(44100,22050,(b,l)=>{for(let i=0;i<l;i++)out.push(b[i]!)}); rs.push(Float64Array.from(ch),ch.length);
 const sig=Float64Array.from(out); const h=new SampleHistory(sig.length); h.append(sig,0,sig.length); const lev=new ActiveLevel(22050); lev.push(sig,0,sig.length);
 const net=createNetworkListener({leastProbability:0.2,leastPeak:0.2});
 const notes=net.hear({source:h,cents,gain:lev.gain(0,1e9),lowMidi:24,highMidi:103,spans:[{fromSec:0,toSec:sig.length/22050}]});
 const j=new Judge(); const kept:any[]=[]; for(const n of notes) kept.push(...j.settle([n],0.35));
 const p=kept.map(n=>n.probability).sort((a:number,b:number)=>a-b); const so=kept.map(n=>n.sounding).sort((a:number,b:number)=>a-b);
 const heard=listen({channels:[ch],sampleRateHz:44100},{piano:{version:1,tuningCents:{value:cents,plusMinus:1,count:9},keys:{}}});
 console.log(name,'sec',(sig.length/22050).toFixed(0),'kept',kept.length,'p q10/50',p[Math.floor(p.length*.1)]?.toFixed(2),p[p.length>>1]?.toFixed(2),'sounding q10/50',so[Math.floor(so.length*.1)]?.toFixed(2),so[so.length>>1]?.toFixed(2), 'batch notes',heard.notes.length);
 return kept;
};
for(const k of ['speech','knocks','claps','dishes','pages','noise','beeps'] as const) for(const s of [1,2]) { const kept=show(k,otherSound(k,20,s).channels[0]!,-28); if(k==='speech') console.log(kept.map(n=>n.midi+' p'+n.probability.toFixed(2)+' s'+n.sounding.toFixed(2)+' l'+n.levelDb.toFixed(0)+' @'+n.timeSec.toFixed(2)).join('\n')); }
for(let i=0;i<5;i++){const {spec}=attemptOf('standard','dev',i); const r=await renderCached({...spec,home:{ tuningCents: -28, room: { decaySec: 0.4, directDb: 4 }, noises: [], peakDb: -8 }}); show('piano '+i+' '+r.truth.notes.length,r.channels[0]!,-28);}
