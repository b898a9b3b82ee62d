"""Performances for training, in plain Python (runs in worker processes): what is struck, when, how loud, released when, and which noises."""
import math,random,numpy as np
K0=24;K=80;SR=22050
TRI=[(0,4,7),(0,3,7),(0,4,7),(0,3,7),(0,3,6),(0,4,8),(0,4,7,10),(0,2,4,5,7,9,11),(0,2,3,5,7,8,11),tuple(range(12))]
def clampg(r,sd,a):return max(-a,min(a,r.gauss(0,sd)))
def perform(T,r):
    """-> ([(onset s, midi, level dB, release s)], pedal used)"""
    c=r.random();kind='arp' if c<.22 else 'chord' if c<.36 else 'low' if c<.43 else 'oct' if c<.69 else 'two' if c<.75 else 'prog' if c<.85 else 'rand' if c<.90 else 'rep' if c<.975 else 'none'
    if kind=='none':return [],False
    sd=r.choice([.8,1.5,3.,4.]);jit=r.choice([.004,.012,.03]);gap=r.choice([-.1,-.04,0,.02,.05,.12,.3]);t=r.uniform(-.3,.6)
    nps=math.exp(r.uniform(0,math.log({'arp':11,'chord':3.5,'low':3,'oct':7,'two':5,'prog':3.5,'rand':6,'rep':13}[kind])))
    if kind in('chord','low','prog'):nps*=.6
    pr=r.randrange(50,74);pb=r.choice([12,24,24,36])
    root=r.randrange(28,88) if kind!='low' else r.randrange(25,50)
    tri=r.choice(TRI)
    if kind in('chord','low','two') and len(tri)>4:tri=r.choice(TRI[:7])
    if kind=='oct' and r.random()<.5:tri=r.choice(TRI[:5])
    scale=[o*12+i for o in range(-3,4) for i in tri];pos=len(scale)//2+r.randrange(-3,4);dr=1
    hd=r.choice([12]*12+[24,24,24,36,15,16,19,7,9]);spread=r.choice([.003,.01,.025,.06]);roll=r.random()<.12;lead=clampg(r,.02,.06);hsd=r.choice([.003,.01,.025])
    single=r.random()<.6;bal=clampg(r,4.5,12);soft=r.random()<.3;softby=r.uniform(3,14);shade=r.uniform(0,5);sp=r.uniform(.1,.6);sph=r.uniform(0,6.3)
    pu,pl=r.choice([(0,0),(.08,.04),(.12,.08),(.35,.1),(.1,.3)]) if kind=='oct' else (0,0);missing=r.choice([0,0,0,0,0,1,2]);m0=r.uniform(0,T);m1=m0+r.uniform(.5,2.5)
    out=[];rep=root
    while t<T:
        n=[]                                     # (midi, hand 0 lower/1 upper, extra level)
        if kind=='arp':n=[(root+scale[pos],0,0)]
        elif kind=='rep':
            q=r.random()
            if q>.8:rep=root+r.choice([0,2,1,12,-12,4,7])
            n=[(rep,0,0)]
            if r.random()<.15:n.append((rep+r.choice([-12,12,19,-5,24]),1,r.gauss(0,4)))
        elif kind=='rand':n=[(min(101,max(26,root+r.randrange(-16,17))),r.randrange(2),r.gauss(0,3)) for _ in range(r.choice([1,1,2,3,4,5,6]))]
        elif kind in('chord','low'):
            q=[scale[(pos+i)%len(scale)] for i in range(r.choice([3,3,3,2,4]))]
            n=[(root+b,0,-softby*r.uniform(.6,1) if soft and 0<j<len(q)-1 else 0) for j,b in enumerate(q)]
            if kind=='low' and r.random()<.4:n+=[(root+12*r.choice([2,3])+scale[(pos+r.randrange(4))%len(scale)],1,r.gauss(2,2))]
        elif kind=='two':                        # close chord or broken bass on the left, line on the right
            n=[(root+24+scale[(pos+r.randrange(4))%len(scale)],1,r.uniform(0,6))]
            if r.random()<.5:
                lp=pos-pos%len(tri);n+=[(root-5+scale[(lp+i)%len(scale)]%24,0,-softby*.4 if soft else 0) for i in range(r.choice([1,2,3,3]))]
        elif kind=='prog':                       # close chord above its own bass, the bass often an octave or two below a chord note
            d=r.choice([0,0,5,7,7,9,2,4]);mi=d in(9,2,4);ch=sorted((d+x-12*(d+x>9)) for x in((0,3,7) if mi else (0,4,7)))
            if r.random()<.3:ch=sorted(set(ch+[d+10-12*(d+10>9)]))
            n=[(pr+x,1,-softby*.6 if soft and 0<j<len(ch)-1 else 0) for j,x in enumerate(ch)]+[(pr+d-pb+12*(r.random()<.25),0,0)]
            if r.random()<.25:n.append((n[-1][0]-12,0,0))
        else:
            q=[scale[(pos+i)%len(scale)] for i in range(1 if single else r.choice([2,3,3,4]))]
            up=[(root+b,1,0) for b in q];lo=[(m-hd,0,0) for m,_,_ in up]
            if missing==1 and m0<t<m1:up=[]
            if missing==2 and m0<t<m1:lo=[]
            z=r.random()
            if z<pu and up:
                if single or r.random()<.3:up=[]
                else:up.pop(r.randrange(len(up)))
            elif z<pu+pl and lo:
                if single or r.random()<.3:lo=[]
                else:lo.pop(r.randrange(len(lo)))
            n=up+lo
        pos+=dr*r.choice([1,1,1,1,2]) if kind not in('chord','low') else r.choice([1,-1,2,-2,0,3])
        if pos>=len(scale)-4 or pos<4 or r.random()<.08:dr=-dr;pos=min(max(pos,4),len(scale)-5)
        # slips: a neighbour instead or as well, an octave or a twelfth as well, a note missing
        if r.random()<.08 and len(n)>1:n.pop(r.randrange(len(n)))
        if r.random()<.07 and n:j=r.randrange(len(n));n[j]=(n[j][0]+r.choice([-2,-1,1,2,12,-12]),)+n[j][1:]
        if r.random()<.06 and n:a=r.choice(n);n.append((a[0]+r.choice([-2,-1,1,2]),a[1],r.uniform(-12,0)))
        if r.random()<.05 and n:a=r.choice(n);n.append((a[0]+r.choice([12,-12,12,24,19,28]),a[1],r.uniform(-12,3)))
        seen={};[seen.setdefault(a[0],a) for a in n if K0<=a[0]<K0+K];n=sorted(seen.values())
        ioi=1/nps*(1+r.gauss(0,.03)+(r.random()<.06)*r.random());up=r.random()<.7
        for j,(m,h,x) in enumerate(n):
            on=t+(r.gauss(0,jit) if len(n)==1 else r.uniform(0,spread)) + (min(.08,.5*ioi/len(n))*(j if up else len(n)-1-j) if roll and len(n)>2 else 0)
            lv=r.gauss(0,sd)+x+shade*math.sin(6.283*sp*t+sph)
            if kind in('oct','two','prog'):
                if h==0:on+=lead+r.gauss(0,hsd)
                lv+=bal*(.5 if h else -.5)+(.15*clampg(r,6,12) if kind=='oct' else 0)
            out.append([on,m,lv,max(on+.05,t+ioi+gap+r.gauss(0,.01))])
        t+=ioi
    ped=r.random()<.27
    if ped:                                      # pedal changed with the harmony
        q=-r.random();lifts=[]
        while q<T+4:q+=r.uniform(.6,3.);lifts.append(q)
        for o in out:
            z=next((l for l in lifts if l>o[0]+.1),T+9)
            if r.random()<.97:o[3]=max(o[3],z+r.gauss(0,.02))
    out.sort();last={};res=[]
    for o in out:
        p=last.get(o[1])
        if p is not None:
            if o[0]-p[0]<.065:continue
            p[3]=min(p[3],o[0]-.005)
        last[o[1]]=o;res.append(o)
    return res,ped
# noises: (class, how many rows of that class the bank holds)
HITS=dict(knock=120,dish=120,click=60,key=120,beep=60,burst=80)
def noises(T,ev,ped,r):
    """-> [(time s, class, which, level dB re a note, speed)]"""
    o=[];empty=not ev;P=lambda p:r.random()<(p*2 if empty else p)
    pois=lambda c,rate,lo,hi,one=False:_pois(o,T,r,c,rate,lo,hi,one)
    if P(.2):pois('knock',math.exp(r.uniform(-1.2,1.4 if not empty else 2)),-22,r.choice([-6,0,9]),r.random()<.5)
    if P(.16):pois('dish',math.exp(r.uniform(-1.2,1.)),-26,r.choice([-8,0,5]))
    if P(.06):pois('click',math.exp(r.uniform(-1.5,1.)),-20,6)
    if P(.09):pois('burst',math.exp(r.uniform(-1.,1.8)),-26,0)
    if P(.15):                                   # metronome
        c=r.choice(['click','click','beep','beep','knock']);w=r.randrange(HITS[c]);w2=r.randrange(HITS[c]) if r.random()<.4 else w;per=r.uniform(.28,1.2);q=r.uniform(-.2,per);lv=r.uniform(-22,6);i=0;bar=r.choice([2,3,4,4,6])
        while q<T:o.append((q,c,w2 if i%bar==0 else w,lv+(3 if i%bar==0 else 0),1.));q+=per;i+=1
    if r.random()<.45:                           # the action: keys before the strike, dampers and keys at release
        lv=r.uniform(-42,-16);ws=[r.randrange(HITS['key']) for _ in range(4)];pre=r.uniform(.004,.03)
        for on,m,l,off in ev:
            if r.random()<.7:o.append((off+r.uniform(-.01,.02),'key',r.choice(ws),lv+r.gauss(0,4),r.uniform(.8,1.25)))
            if r.random()<.4:o.append((on-pre*r.random(),'key',r.choice(ws),lv-4+r.gauss(0,4),r.uniform(.8,1.25)))
    if ped and r.random()<.5:pois('knock',r.uniform(.3,1.),-30,-10,True)
    return o
def _pois(o,T,r,c,rate,lo,hi,one):
    t=-r.expovariate(rate);w=r.randrange(HITS[c])
    base=r.uniform(lo,hi)
    while True:
        t+=r.expovariate(rate)
        if t>T:return
        o.append((t,c,w if one else r.randrange(HITS[c]),base+r.gauss(0,2.5),r.uniform(.75,1.35) if not one else 1.))
class Maker:
    """batches of event tables. meta: tbl (P,K,8) rows, mid of rows, nl, weight of each real piano; nsyn synthetic pianos of lay layers from row syn0; hit0 first noise row"""
    def __init__(s,meta,B,T,seed):
        s.__dict__.update(meta);s.B=B;s.T=T;s.r=random.Random(seed)
        s.first={};q=s.hit0
        for c,n in HITS.items():s.first[c]=q;q+=n
    def batch(s):
        r=s.r;T=s.T;rows=[];ev5=[];ped=np.zeros(s.B,np.float32);rng=np.zeros((s.B,2),np.int64)
        for b in range(s.B):
            ev,pd=perform(T,r);ped[b]=pd;real=r.random()<s.preal
            if real:p=r.choices(range(len(s.real)),s.weight)[0];p=s.real[p];nl=int(s.nl[p])
            else:p=r.randrange(s.nsyn);nl=s.lay
            g=r.gauss(0,6) if r.random()<.85 else r.uniform(-25,25);nd=r.choice([.5,1.5,3.]);bl=r.uniform(0,nl);rel=r.uniform(.04,.25);vo=[r.gauss(0,1.) for _ in range(K)]
            shift=r.choice([-3,-2,-1,1,2,3]) if r.random()<.3 else 0;md=float(np.median([e[2] for e in ev])) if ev else 0
            for on,m,lv,off in ev:
                lv2=lv+vo[m-K0];ly=min(nl-1,max(0,int(bl+lv/4)));k=min(K-1,max(0,m-K0+shift));ct=g+r.gauss(0,nd)*.5
                if real:row=int(s.tbl[p,k,ly]);mid=float(s.mid[row])
                else:row=s.syn0+(p*K+k)*s.lay+ly;mid=k+K0
                rr=rel*(1+max(0,(60-m)/24))
                rows.append((b,row,on*SR,2**((m-mid+ct/100)/12),10**(lv2/20),(off-on)*SR if m<90 else 1e9,2.302585/(rr*SR)));ev5.append((b,on,m,lv2-md,off))
            for q,c,w,lv,sp in noises(T,ev,pd,r):rows.append((b,s.first[c]+w,q*SR,sp,10**(lv/20),1e9,0.))
            lo,hi=0,K
            if ev and r.random()<.5:
                mm=[e[1]-K0 for e in ev];lo=max(0,min(mm)-r.randrange(3,24));hi=min(K,max(mm)+1+r.randrange(3,24))
            rng[b]=lo,hi
        R=np.array(rows,np.float64).reshape(-1,7);E=np.array(ev5,np.float64).reshape(-1,5)
        return R,E,ped,rng
