"""Evaluation on the pianos kept out of training (1 vsco2 upright, 3 iowa). Thresholds are chosen on the training pianos.
   python3 evaluate.py DIR net.pt [net.pt ...]      writes DIR/eval.json and prints the tables"""
import sys,os,time,math,random,json,numpy as np,torch,torch.nn.functional as F
import core,sound
from core import SR
N=int(os.environ.get("EVALN",262144));T=N/SR;TEST=(1,3);DEV=(0,4)
MAJ=(0,2,4,5,7,9,11)
# ------------------------------------------------------------------ what is played
def put(o,t,m,lv,dur):o.append([t,m,lv,t+dur])
def single(r):
    o=[];root=r.randrange(36,78);sc=r.choice([MAJ,(0,2,3,5,7,8,11),(0,4,7),(0,3,7),(0,4,7,10),tuple(range(12))]);up=[root+12*q+s for q in range(2) for s in sc]+[root+24];ln=up+up[-2::-1];nps=math.exp(r.uniform(math.log(2),math.log(9)));t=.4;i=0
    while t<T-.7:put(o,t+r.gauss(0,.008),ln[i%(len(ln)-1)],r.gauss(0,1.5),1/nps*r.uniform(.85,1.05));t+=1/nps;i+=1
    return o
def triads(r,low=False):
    o=[];root=r.randrange(28,42) if low else r.randrange(43,70);t=.4;per=r.uniform(.5,1.2);sp=r.uniform(0,.025);i=0;q=r.choice([(0,4,7),(0,3,7)])
    while t<T-1:
        k=i%6;k=k if k<4 else 6-k;v=[root+q[(k+j)%3]+12*((k+j)//3) for j in range(3)]
        for m in v:put(o,t+r.uniform(0,sp),m,r.gauss(0,1.5),per*.92)
        t+=per;i+=1
    return o
def prog(r):
    o=[];root=r.randrange(55,67);t=.4;per=r.uniform(.6,1.2);i=0;C=[(0,4,7),(0,5,9),(-1,5,7),(0,4,7)] if r.random()<.5 else [(0,4,7),(0,5,9),(-1,2,7),(-1,2,5,7),(0,4,7)];Bs=[0,5,7,0] if len(C)==4 else [0,5,7,7,0]
    while t<T-1.2:
        j=i%len(C)
        for m in C[j]:put(o,t+r.uniform(0,.02),root+m,r.gauss(0,1.5),per*.95)
        put(o,t+r.gauss(0,.012),root-24+Bs[j]+(12 if r.random()<.3 else 0),r.gauss(1,1.5),per*.95);t+=per;i+=1
    return o
def hands(r,gap=None):
    o=[];root=r.randrange(36,56);sc=r.choice([MAJ,(0,2,3,5,7,8,11),(0,4,7),(0,3,7),(0,4,7,10)]);up=[root+12*q+s for q in range(2) for s in sc]+[root+24];ln=up+up[-2::-1];nps=math.exp(r.uniform(math.log(1.5),math.log(6)));t=.4;i=0;gap=gap or r.choice([12,12,24]);lead=r.gauss(0,.012);bal=r.gauss(0,2)
    while t<T-.7:
        m=ln[i%(len(ln)-1)];put(o,t+r.gauss(0,.006),m,r.gauss(0,1.5),1/nps*.95);put(o,t+lead+r.gauss(0,.01),m+gap,bal+r.gauss(0,1.5),1/nps*.95);t+=1/nps;i+=1
    return o
def pairs(r):
    """octaves with either note absent and level differences -12..+6 dB; also returns the steps"""
    o=[];S=[];root=r.randrange(36,58);sc=r.choice([MAJ,(0,4,7),(0,3,7),tuple(range(12))]);up=[root+12*q+s for q in range(2) for s in sc]+[root+24];ln=up+up[-2::-1];nps=math.exp(r.uniform(math.log(1.5),math.log(5)));t=.4;i=0
    while t<T-.7:
        m=ln[i%(len(ln)-1)];z=r.random();d=r.uniform(-12,6);a=t+r.gauss(0,.005);b=t+r.gauss(0,.012);k='both'
        if z<.2:k='lower'
        elif z<.3:k='upper'
        if k!='upper':put(o,a,m,r.gauss(0,1),1/nps*.95)
        if k!='lower':put(o,b,m+12,d if k=='both' else r.gauss(0,1),1/nps*.95)
        S.append((k,t,m,d));t+=1/nps;i+=1
    return o,S
def inner(r):
    o=[];root=r.randrange(43,65);t=.4;per=r.uniform(.6,1.2);i=0
    while t<T-1:
        v=[root+x for x in r.choice([(0,4,7),(0,3,8),(0,5,9),(0,4,7,12),(0,3,7,12),(0,5,9,12)])]
        for j,m in enumerate(v):put(o,t+r.uniform(0,.02),m,-8+r.gauss(0,1) if 0<j<len(v)-1 else r.gauss(0,1),per*.9)
        root+=r.choice([-2,-1,1,2]);root=min(66,max(42,root));t+=per;i+=1
    return o
def fast(r):
    o=[];m=r.randrange(40,84);t=.4;nps=r.uniform(7,11)
    while t<T-.5:
        for _ in range(r.choice([4,4,3,6])):put(o,t+r.gauss(0,.004),m,r.gauss(0,1.5),.7/nps);t+=1/nps
        m=min(90,max(36,m+r.choice([-2,-1,1,2,12,-12])))
    return o
def mixed(i):return (single,triads,hands,single,prog,hands,single,triads,hands,single,prog,hands,single,triads,hands,prog)[i%16]
# ------------------------------------------------------------------ how it is heard
def G(seed,dev):g=torch.Generator(device='cpu');g.manual_seed(seed);return lambda *s:torch.randn(*s,generator=g).to(dev)
def conv(y,h):
    n=y.shape[1];m=1<<(n+h.shape[-1]).bit_length();return torch.fft.irfft(torch.fft.rfft(y,m)*torch.fft.rfft(h,m),m)[:,:n]
def room(y,rt,drr,seed):
    rn=G(seed,y.device);m=int(1.5*SR);t=torch.arange(m,device=y.device)/SR;h=rn(y.shape[0],m)*10**(-3*t/rt)*(t>.005);X=torch.fft.rfft(h);f=torch.arange(X.shape[1],device=y.device)*SR/m;h=torch.fft.irfft(X/(1+(f/5000)**2).sqrt()*(f/(f+60)),m)
    h=h/h.pow(2).sum(1,keepdim=True).sqrt()*10**(-drr/20);h[:,0]+=1
    for d,g in((97,.3),(211,-.22),(389,.2)):h[:,d]+=g
    return conv(y,h)
def act(y):return sound.act(y)
def pink(y,snr,seed,al=.5):
    n=y.shape[1];z=G(seed,y.device)(*y.shape);z=torch.fft.irfft(torch.fft.rfft(z)/torch.arange(1,n//2+2,device=y.device).float().clamp(min=20*n/SR)**al,n);return y+z/z.std(1,keepdim=True)*act(y)*10**(-snr/20)
def hits(ctx,y,cls,rate,lv,seed,per=None):
    r=random.Random(seed);R=[];B=y.shape[0];from_=sound_hits(cls)
    for b in range(B):
        t=r.uniform(0,.5);w=ctx['hit0']+from_+r.randrange(sound.HITS[cls])
        while t<T:
            R.append((b,w if per else ctx['hit0']+from_+r.randrange(sound.HITS[cls]),t*SR,1.,10**(lv/20)*(1 if per else 10**(r.gauss(0,2)/20)),1e9,0.));t+=per if per else r.expovariate(rate)
    return y+sound.render(ctx['W'],ctx['on'],np.array(R),B,y.shape[1])
def sound_hits(c):
    q=0
    for k,v in sound.HITS.items():
        if k==c:return q
        q+=v
def talk(ctx,y,snr,seed):
    v=ctx['talk'];r=random.Random(seed);s=torch.stack([v[o:o+N] for o in [r.randrange(len(v)-N) for _ in range(y.shape[0])]]);return y+s/act(s)*act(y)*10**(-snr/20)
def agc(y):
    w=4410;cs=F.pad(y.double().pow(2).cumsum(1),(w,0));q=((cs[:,w:]-cs[:,:-w])/w).clamp(min=0).sqrt().float();a=act(y);return y*(a/(q+.05*a))**.7
def lowpass(y,fc):
    X=torch.fft.rfft(y);f=torch.arange(X.shape[1],device=y.device)*SR/y.shape[1];return torch.fft.irfft(X*(f<fc),y.shape[1])
def clip(y,c):m=y.abs().max(1,keepdim=True)[0]*c;return torch.maximum(torch.minimum(y,m),-m)
def quiet(y):
    y=pink(y/y.abs().max(1,keepdim=True)[0],45,3);y=y*10**(-38/20);return (y*32767).round()/32767
base=lambda y,s=1:pink(room(y,.35,8,s),45,s+1)
def conditions(ctx):
    return dict(clean=lambda y:pink(y,60,5),room04=base,noise15=lambda y:pink(room(y,.35,8,1),15,2),speech12=lambda y:base(talk(ctx,y,12,3)),hum=lambda y:base(y)+act(y)*10**(-10/20)*sum(torch.sin(6.283185*50*k*torch.arange(N,device=y.device)/SR+k)/k for k in(1,2,3,5))[None],
        metronome=lambda y:base(hits(ctx,y,'click',0,-3,4,per=.5)),beeps=lambda y:base(hits(ctx,y,'beep',0,-6,14,per=.6)),knocks=lambda y:base(hits(ctx,y,'knock',1.5,-3,5)),dishes=lambda y:base(hits(ctx,y,'dish',1.,-6,6)),agc=lambda y:agc(base(y)),
        coder=lambda y:sound.codec(base(y),random.Random(5)),band4k=lambda y:lowpass(base(y),4000),clip25=lambda y:clip(base(y),.25),room12=lambda y:pink(room(y,1.2,0,7),40,8),quiet38=quiet,pedal=base,detune=base)
# ------------------------------------------------------------------ scoring
def match(ref,est,tol=.05):
    """pairs (ref index, est index), same key, nearest first"""
    by={};[by.setdefault(e[1],[]).append(j) for j,e in enumerate(est)];c=[]
    for i,e in enumerate(ref):
        for j in by.get(e[1],()):
            d=abs(est[j][0]-e[0])
            if d<=tol:c.append((d,i,j))
    c.sort();a=set();b=set();o=[]
    for d,i,j in c:
        if i in a or j in b:continue
        a.add(i);b.add(j);o.append((i,j))
    return o
def score(refs,ests,thr):
    tp=fp=fn=0;d=[];gh={12:0,19:0,24:0};nr=0
    for ref,est in zip(refs,ests):
        est=[e for e in est if e[2]>=thr];p=match(ref,est);tp+=len(p);fn+=len(ref)-len(p);fp+=len(est)-len(p);nr+=len(ref);d+=[est[j][0]-ref[i][0] for i,j in p];used={j for _,j in p};on={}
        [on.setdefault(e[1],[]).append(e[0]) for e in ref]
        for j,e in enumerate(est):
            if j in used:continue
            for g in gh:
                if any(abs(t-e[0])<.06 for t in on.get(e[1]-g,())):gh[g]+=1;break
    d=np.array(d) if d else np.zeros(1);f=lambda k:2*k/max(1,2*tp+fp+fn);bias=float(np.median(d))
    return dict(P=tp/max(1,tp+fp),R=tp/max(1,tp+fn),F50=f(tp),F25=f(int((np.abs(d)<=.025).sum())),F10=f(int((np.abs(d)<=.01).sum())),sd=float(np.std(d))*1000,bias=bias*1000,mad=float(np.median(np.abs(d-bias)))*1482.6,oct=gh[12]/max(1,nr),twelfth=gh[19]/max(1,nr),oct2=gh[24]/max(1,nr),n=nr,extra=fp/max(1,nr))
def octaves(steps,ests,thr):
    c={k:[0,0] for k in('upper +6..-3','upper -3..-6','upper -6..-9','upper -9..-12','lower of both','upper alone','lower alone','invented upper','invented lower')}
    for S,est in zip(steps,ests):
        by={};[by.setdefault(e[1],[]).append(e[0]) for e in est if e[2]>=thr];has=lambda m,t:any(abs(q-t)<.07 for q in by.get(m,()))
        for k,t,m,d in S:
            def add(q,v):c[q][0]+=v;c[q][1]+=1
            if k=='both':add('upper +6..-3' if d>-3 else 'upper -3..-6' if d>-6 else 'upper -6..-9' if d>-9 else 'upper -9..-12',has(m+12,t));add('lower of both',has(m,t))
            elif k=='lower':add('lower alone',has(m,t));add('invented upper',has(m+12,t))
            else:add('upper alone',has(m+12,t));add('invented lower',has(m,t))
    return {k:(v[0]/max(1,v[1]),v[1]) for k,v in c.items()}
# ------------------------------------------------------------------ running
def make(ctx,piano,gen,seed,count,pedal=False,cents=0.,lay=None):
    md=ctx['md'];R=[];refs=[];steps=[]
    for b in range(count):
        r=random.Random(seed*1000+b);g=gen(b) if gen is mixed else gen;q=g(r);st=None
        if isinstance(q,tuple):q,st=q
        q=[e for e in q if 24<=e[1]<104];q.sort();last={};nl=int(md['nl'][piano]);rel=r.uniform(.06,.16);lift=sorted(r.uniform(0,T) for _ in range(5)) if pedal else []
        for e in q:
            if pedal:e[3]=max(e[3],next((l for l in lift if l>e[0]+.15),T))
            p=last.get(e[1])
            if p is not None:p[3]=min(p[3],e[0]-.005)
            last[e[1]]=e
        for t,m,lv,off in q:
            row=int(md['tbl'][piano,m-24,min(nl-1,int(nl*.5+lv/4))]);own=round(float(md['mid'][row]));rr=rel*(1+max(0,(60-m)/24))
            R.append((b,row,t*SR,2**((m-own+cents/100)/12),10**(lv/20),(off-t)*SR if m<90 else 1e9,2.302585/(rr*SR)))
        refs.append(q);steps.append(st)
    return sound.render(ctx['W'],ctx['on'],np.array(R),count,N),refs,steps
class Ours:
    def __init__(s,net):s.net=net;s.hop=net.hop
    @torch.no_grad()
    def __call__(s,y):
        y=core.level(y);c=(core.tuning(y)/5).round().int().mul(5).tolist();f=core.features(y,c);o=s.net(f,core.frames(N,s.hop));return core.pick(o,s.hop)
class Study:
    """the study's nets (hop 128) through their own features"""
    def __init__(s,path,dev):
        import study_core as sc;d=np.load(path);s.sc=sc;k={q:torch.tensor(d[q].astype(np.float32) if d[q].dtype.kind=='f' else d[q]) for q in d.files};C=k['stem.weight'].shape[0];s.net=sc.Net(C,k['b.0.rd.weight'].shape[0]);s.net.load_state_dict(k);s.net.to(dev).eval();s.f={}
    @torch.no_grad()
    def __call__(s,y):
        y=core.level(y);c=(core.tuning(y)/5).round().int().mul(5).tolist();out=[]
        for b in range(len(y)):
            if c[b] not in s.f:s.f[c[b]]=s.sc.Feat(c[b]).to(y.device)
            o=s.net(s.f[c[b]](y[b:b+1]))[0];out+=core.pick(o[:,:,None],128)
        return out
def context(dev):
    md=np.load('data/notes.npz');w=torch.tensor(sound.decode('data/notes.xz'),device=dev);h=sound.hit_bank(dev,seed=77);td=np.load('data/talk.npz');tk=torch.tensor(sound.decode('data/talk.xz')[0],device=dev).float()/32768/.08
    return dict(md=md,W=torch.cat([w,h]),on=torch.cat([torch.tensor(md['on'],device=dev).int(),torch.zeros(len(h),device=dev).int()]),hit0=len(w),talk=tk[int(td['split']):])
def run(nets,out,dev,quick=False,study=False,budget=100,count=16):
    t0=time.time();ctx=context(dev);L=[(n,Ours(m)) for n,m in nets]
    if study:L+=[(q,Study('study/%s_f16.npz'%q,dev)) for q in('c48','ft48')]
    con=conditions(ctx);PB=sound.pedal_bank(dev,1<<19,2,seed=99);res={n:{} for n,_ in L};hold={n:[[],[]] for n,_ in L};thr={}
    def hear(y):return {n:f(y) for n,f in L}
    # thresholds, on pianos that were trained on
    for p in DEV:
        for i,g in enumerate((single,triads,hands,prog)):
            y,refs,_=make(ctx,p,g,900+i,int(os.environ.get("EVALDEV",6)))
            for n,e in hear(base(y,20)).items():hold[n][0]+=refs;hold[n][1]+=e
    for n,_ in L:
        c=[(score(*hold[n],q)['F50'],q) for q in np.arange(.2,.91,.05)];m=max(c)[0];ok=[q for v,q in c if v>=m-.0007];thr[n]=float(np.median(ok));res[n]['threshold']=thr[n];res[n]['trained pianos']=score(*hold[n],thr[n])
        print(n,'threshold %.2f'%thr[n],'F50 by threshold',' '.join('%.2f:%.4f'%(q,v) for v,q in c),flush=True)
    def show(name,refs,E):
        for n,_ in L:res[n][name]=s=score(refs,E[n],thr[n]);print('%-22s %-12s P %.4f R %.4f F50 %.4f F25 %.4f F10 %.4f sd %.1f mad %.1f bias %+.1f | ghosts oct %.4f 12th %.4f 2oct %.4f | n %d'%(name,n,*[s[k] for k in('P','R','F50','F25','F10','sd','mad','bias','oct','twelfth','oct2','n')]),flush=True)
    for name,g in dict(single=single,triads=triads,low_triads=lambda r:triads(r,True),progressions=prog,hands=hands,hands_octave=lambda r:hands(r,12),inner_soft=inner,fast_repeats=fast,pairs=pairs).items():
        refs=[];E={n:[] for n,_ in L};S=[]
        for p in TEST:
            y,rf,st=make(ctx,p,g,10*p+len(name),max(1,count//2) if quick else count);refs+=rf;S+=st
            for n,e in hear(base(y,p)).items():E[n]+=e
        show(name,refs,E)
        if name=='pairs':
            for n,_ in L:
                res[n]['octaves']=o=octaves(S,E[n],thr[n]);print('   %-12s'%n,' '.join('%s %.3f (%d)'%(k,*v) for k,v in o.items()),flush=True)
                res[n]['octave curve']=[(round(float(q),2),octaves(S,E[n],q)) for q in np.arange(.1,1,.1)]
    for name,f in con.items():
        if time.time()-t0>budget or quick and name not in('room04','speech12','clip25'):print('not run:',name);continue
        refs=[];E={n:[] for n,_ in L}
        for p in TEST:
            cs=[0.] if name!='detune' else [-90.,-65.,-40.,40.][:count]
            for c in cs:
                y,rf,_=make(ctx,p,mixed,50+p,count//len(cs),pedal=name=='pedal',cents=c)
                if name=='pedal':z=torch.fft.irfft(torch.fft.rfft(y,1<<19)*PB[p%2],1<<19)[:,:N];y=y+z/z.pow(2).mean(1,keepdim=True).sqrt()*y.pow(2).mean(1,keepdim=True).sqrt()*10**(-20/20)
                for n,e in hear(f(y)).items():
                    if name=='detune':             # the exercise's key settles the semitone
                        for b in range(len(rf)):
                            best=max((-1,0,1),key=lambda q:len(match(rf[b],[(x[0],x[1]+q)+tuple(x[2:]) for x in e[b] if x[2]>=thr[n]])));e[b]=[(x[0],x[1]+best)+tuple(x[2:]) for x in e[b]]
                    E[n]+=e
                refs+=rf
        show('mixed '+name,refs,E)
    # no piano at all: false notes a minute
    quiet0=G(77,dev)(8,N)*.08*10**(-45/20);v=talk(ctx,torch.ones(8,N,device=dev)*.08,0,31)-.08
    for name,y in dict(speech_only=quiet0+v,knocks_only=hits(ctx,quiet0,'knock',2,0,32),dishes_only=hits(ctx,quiet0,'dish',1.5,0,33),metronome_only=hits(ctx,quiet0,'click',0,0,34,per=.5)).items():
        E=hear(base(y,40))
        for n,_ in L:res[n][name]=q=sum(sum(e[2]>=thr[n] for e in x) for x in E[n])/(8*T/60);print('%-16s %-12s false notes a minute %.1f'%(name,n,q),flush=True)
    json.dump(res,open(out+'/eval.json','w'),indent=1);print('evaluated in %.0f s'%(time.time()-t0),flush=True)
    return res
def load(path,dev):
    ck=torch.load(path,map_location=dev);m=core.Net(**ck['cfg']);m.load_state_dict({k:v for k,v in ck['ema'].items()},strict=True);return m.to(dev).eval()
if __name__=='__main__':
    dev='cuda' if torch.cuda.is_available() else 'cpu';run([(os.path.basename(p)[:-3],load(p,dev)) for p in sys.argv[2:]],sys.argv[1],dev,study=True,budget=300)
