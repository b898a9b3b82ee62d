"""Real codecs, the played range given or not, and a split by piano: numpy and the exported net on the main machine.   codecs.py STEM [clips a piano]"""
import sys,os,json,subprocess,random,numpy as np,torch
os.environ['EVALN']=str(262144)
import evaluate as E,sound,core
from reference import Exported,level,tuning
stem=sys.argv[1];cnt=int(sys.argv[2]) if len(sys.argv)>2 else 6;thr=float(sys.argv[3]) if len(sys.argv)>3 else .65;torch.set_num_threads(1)
md=np.load('data/notes.npz');w=torch.tensor(sound.decode('data/notes.xz'));ctx=dict(md=md,W=w,on=torch.tensor(md['on']).int(),hit0=len(w));X=Exported(stem);from scipy_wav import write
def through(x,enc,ext):
    x=x/np.abs(x).max()*.7;write('/tmp/tr/c.wav',x);subprocess.run(['ffmpeg','-v','error','-y','-i','/tmp/tr/c.wav','-ar','48000',*enc,'/tmp/tr/c.'+ext],check=True)
    return np.frombuffer(subprocess.run(['ffmpeg','-v','error','-i','/tmp/tr/c.'+ext,'-f','s16le','-ac','1','-ar','22050','-'],capture_output=True).stdout,np.int16)[:len(x)]/32768.
def hear(x,lo=0,hi=None):
    z=level(x);c=round(tuning(z)/5)*5;return X.notes(X.forward(X.features(z,c),lo,hi),lo)
C={'as rendered':None,'opus 16k':(['-c:a','libopus','-b:a','16k'],'ogg'),'opus 24k':(['-c:a','libopus','-b:a','24k'],'ogg'),'aac 64k':(['-c:a','aac','-b:a','64k'],'m4a'),'mp3 64k':(['-c:a','libmp3lame','-b:a','64k'],'mp3')}
R={}
for p in E.TEST:
    y,refs,_=E.make(ctx,p,E.mixed,50+p,cnt);y=E.base(y).numpy().astype(float)
    for b in range(cnt):
        for n,c in C.items():
            x=y[b] if c is None else through(y[b],*c);e=hear(x);R.setdefault(n,[]).append((refs[b],e));R.setdefault(n+' piano %d'%p,[]).append((refs[b],e)) if c is None else None
        m=[q[1]-24 for q in refs[b]]
        for g in(3,12):R.setdefault('range known +-%d'%g,[]).append((refs[b],hear(y[b],max(0,min(m)-g),min(80,max(m)+g+1))))
    print('piano',p,'done',flush=True)
O={}
for n,v in R.items():
    a=[q for q,_ in v];e=[q for _,q in v];s=E.score(a,e,thr);d=s['bias']/1000;e2=[[(t-d,)+tuple(r) for t,*r in x] for x in e];s2=E.score(a,e2,thr);O[n]=s2;print('%-22s P %.4f R %.4f F50 %.4f F25 %.4f F10 %.4f sd %.1f bias before %+.1f oct ghosts %.4f n %d'%(n,s2['P'],s2['R'],s2['F50'],s2['F25'],s2['F10'],s2['sd'],s['bias'],s2['oct'],s2['n']))
json.dump(O,open(stem+'.codecs.json','w'))
