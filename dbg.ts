import { attemptOf } from './tests/bench/attempts.ts';
import { renderCached } from './tests/bench/render-cached.ts';
import { joinSession } from './tests/support/session.ts';
import { createLiveEar } from './src/engine/index.ts';
const set=process.argv[2] as any;
const rs=[]; for(let i=0;i<20;i++){const {spec}=attemptOf(set,'dev',i); rs.push(await renderCached({...spec,home:{ tuningCents: -28, room: { decaySec: 0.4, directDb: 4 }, noises: [], peakDb: -8 }}));}
const s=joinSession(rs,{seed:11,pauseSec:{least:5,most:12}});
const K=['speech','knocks','speech','pages','claps','speech','dishes','noise'];
let first=0; const ear=createLiveEar({sampleRateHz:44100,channels:1}); const fs:any[]=[];
for(let i=0;i<s.channel.length;i+=441) for(const e of ear.push([s.channel.subarray(i,i+441)])){ if(e.kind==='started')first=e.timeSec; if(e.kind==='ended') fs.push({first,...e}); if((e as any).kind==='debug') console.log(JSON.stringify(e)); }
for(const f of fs){const i=s.attempts.findIndex(a=>f.first>=a.fromSec-.1&&f.first<=a.toSec); const j=s.attempts.findIndex(a=>a.fromSec>f.first); console.log(f.first.toFixed(2),f.endSec.toFixed(2),'notes',f.notes,i>=0?`attempt ${i} (${s.attempts[i]!.notes.length} notes, first ${s.attempts[i]!.notes[0]!.timeSec.toFixed(2)} last ${s.attempts[i]!.notes.at(-1)!.timeSec.toFixed(2)})`:`INVENTED in ${K[(j<0?20:j)%8]} before attempt ${j}`);}
const found=new Set(fs.map(f=>s.attempts.findIndex(a=>f.first>=a.fromSec-.1&&f.first<=a.toSec))); s.attempts.forEach((a,i)=>{if(!found.has(i)){const iv=a.notes.slice(1).map((n,k)=>n.timeSec-a.notes[k]!.timeSec); console.log('MISSED',i,rs[i]!.truth.exercise,'from',a.notes[0]!.timeSec.toFixed(2),'n',a.notes.length,'max gap',Math.max(...iv).toFixed(2));}});
