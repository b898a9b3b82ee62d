"""Exercises for training the closer look, in plain Python (runs in worker processes): what was written, what was struck, and which keys are asked about."""
import math,random,numpy as np
from play import K0,K,SR,HITS,clampg,noises
MAJ=(0,2,4,5,7,9,11);HMIN=(0,2,3,5,7,8,11)
OFF=36;COND=3*(2*OFF+1)+3
def written(r,T):
    """-> list of steps, each a list of (midi, hand 0 lower/1 upper), which time through the line each belongs to, the kind, and steps a second"""
    kind=r.choices(('single','chord','octave','chords'),(.06,.22,.44,.28))[0];minor=r.random()<.5;tri=(0,3,7) if minor else (0,4,7)
    nps=math.exp(r.uniform(math.log(.9),math.log({'single':8,'octave':8,'chord':3,'chords':3}[kind])));N=max(3,int(T*nps))
    tonic=r.randrange(28,76) if kind in('single','chord') else r.randrange(28,62)
    if kind in('single','octave'):
        deg=tri if r.random()<.7 else (HMIN if minor else MAJ);n=r.choice([1,2,2,3,4])
        while n<4 and 2*len(deg)*n<.6*N:n+=1
        up=[12*o+d for o in range(n) for d in deg]+[12*n];line=up+up[-2::-1];top=len(up)-1
        if r.random()<.15:line=[x for i in range(len(deg)*n-2) for x in (up[i],up[i+1],up[i+2])]
        # it mostly turns around within the clip, so that its pairs come again
        a=r.randrange(len(line)) if r.random()<.25 else max(0,top-r.randint(1,max(1,min(top,N//2+1))))
        line=[[x] for x in line]
    elif r.random()<.5:                          # triad and its inversions
        up=[[tri[(i+j)%3]+12*((i+j)//3) for j in range(3)] for i in range(4)];line=up+up[-2::-1];a=r.randrange(len(line)) if r.random()<.3 else 0
    else:                                        # close position, common tones kept
        q=[[0,tri[1],7],[0,5,8 if minor else 9],[0,tri[1],7],[-1,5,7],[0,tri[1],7]]
        i=r.randrange(3);line=[sorted(x+12*(x<(-1,2,5)[i]) for x in c) for c in q];a=r.randrange(5) if r.random()<.3 else 0
    w=[line[(a+i)%len(line)] for i in range(N+2)];again=[(a+i)//len(line) for i in range(N+2)];up=1 if kind not in('octave','chords') and r.random()<.3 else 0
    steps=[[(tonic+x,up) for x in c] for c in w]
    if kind in('octave','chords'):
        d=r.choice([12]*9+[24,24,7]);steps=[s+[(m+d,1) for m,_ in s] for s in steps]
    return [[(m,h) for m,h in s if K0<=m<K0+K] for s in steps],again,kind,nps
def perform(T,r):
    """-> events [on, midi, level, off], steps [(written midis, indices of struck events that answer them, nominal time, hands, which time through the line)], pedal"""
    w,again,kind,nps=written(r,T);t=r.uniform(.1,.5);habits={};clings=r.choice([0,.1,.5])
    sd=r.choice([.8,1.5,3.]);gap=r.choice([-.1,-.04,0,.02,.05,.12,.3]);spread=r.choice([.003,.01,.02,.04,.06]);roll=r.random()<.1
    lead=clampg(r,.018,.05);hsd=r.choice([.003,.008,.015,.025]);bal=clampg(r,4.5,12) if r.random()<.8 else -r.uniform(4,12);soft=r.random()<.35;softby=r.uniform(2,10);shade=r.uniform(0,5);sp=r.uniform(.1,.6);sph=r.uniform(0,6.3)
    pm=r.choice([0,.06,.15,.35]);gone=r.choice([0,0,0,0,1,2]);g0=r.uniform(0,T);g1=g0+r.uniform(.5,4);jit=r.choice([.004,.012,.025])
    ev=[];steps=[]
    for s,cyc in zip(w,again):
        if t>T-.15 or not s:break
        struck=[[m,h,0.,True] for m,h in s]      # midi, hand, extra level, answers a written note
        if gone and g0<t<g1:struck=[x for x in struck if x[1]!=gone-1]
        name=tuple(m for m,_ in s)
        if name in habits and r.random()<clings:struck=[x for x in struck if x[0]!=habits[name]]     # what was left out is left out again
        elif r.random()<pm and struck:
            z=r.random();j=r.randrange(len(struck));hi=[i for i,x in enumerate(struck) if x[1]==1]
            if kind in('octave','chords') and hi and r.random()<.45:j=r.choice(hi)
            if z<.5:habits[name]=struck.pop(j)[0]
            elif z<.78:struck[j]=[struck[j][0]+r.choice([-2,-1,-1,1,1,2]),struck[j][1],0.,False]
            elif z<.82:struck[j]=[struck[j][0]+r.choice([-12,12]),struck[j][1],0.,False]
            elif z<.94:struck.append([struck[j][0]+r.choice([-2,-1,-1,1,1,2]),struck[j][1],r.uniform(-12,0),False])
            else:struck.append([struck[j][0]+r.choice([-12,12,19,24]),struck[j][1],r.uniform(-10,2),False])
        seen=set();struck=[x for x in struck if K0<=x[0]<K0+K and not (x[0] in seen or seen.add(x[0]))]
        ioi=1/nps*(1+r.gauss(0,.03)+(r.random()<.06)*r.random());up=r.random()<.7;n=len(struck);mine=[];base=t+r.gauss(0,jit)
        for h in(0,1):
            q=[x for x in struck if x[1]==h];q.sort();hh=(lead+r.gauss(0,hsd)) if h==0 and kind in('octave','chords') else 0
            for j,x in enumerate(q):
                on=base+hh+(r.uniform(0,spread) if len(q)>1 else 0)+(min(.07,.4*ioi/len(q))*(j if up else len(q)-1-j) if roll and len(q)>2 else 0)
                lv=r.gauss(0,sd)+x[2]+shade*math.sin(6.283*sp*t+sph)+(-softby*r.uniform(.6,1) if soft and 0<j<len(q)-1 else 0)
                if kind in('octave','chords'):lv+=bal*(.5 if h else -.5)
                mine.append(len(ev));ev.append([on,x[0],lv,max(on+.05,t+ioi+gap+r.gauss(0,.01)),x[3]])
        steps.append(([m for m,_ in s],mine,t,{m:h for m,h in s},cyc));t+=ioi
    ped=r.random()<.2
    if ped:
        q=-r.random();lifts=[]
        while q<T+4:q+=r.uniform(.6,3.);lifts.append(q)
        for o in ev:
            z=next((l for l in lifts if l>o[0]+.1),T+9)
            if r.random()<.97:o[3]=max(o[3],z+r.gauss(0,.02))
    last={}
    for i in sorted(range(len(ev)),key=lambda i:ev[i][0]):
        p=last.get(ev[i][1])
        if p is not None:ev[p][3]=min(ev[p][3],ev[i][0]-.005)
        last[ev[i][1]]=i
    return ev,steps,ped,kind
def place(rows,k):return [m-k+OFF for m in rows if abs(m-k)<=OFF]
def queries(ev,steps,T,cents,r):
    """-> [(t0 s, key, struck 0/1, dt s, weight, class, level below the loudest of the step, cond indices, scalars)]
    last: what its twins share, None where it is not written
    class: 0 written and alone, 1 written chord note, 2 written, an octave (or two) above another written note, 3 written, an octave below one, 4 not written"""
    out=[]
    for i,(w,mine,t,hands,cyc) in enumerate(steps):
        ok=[j for j in mine if ev[j][4]]
        if not ok:continue
        sub=[j for j in ok if r.random()<.85] or [r.choice(ok)]
        t0=sum(ev[j][0] for j in sub)/len(sub)+r.gauss(0,.006 if r.random()<.92 else .02)
        if t0<.12 or t0>T-.2:continue
        prev=steps[i-1] if i else None;nxt=steps[i+1] if i+1<len(steps) else None
        at={ev[j][1]:ev[j] for j in mine};top=max(ev[j][2] for j in mine)
        near={e[1] for e in ev if -.13<e[0]-t0<.2}
        ask=[(m,True) for m in w]
        cand=[m for j in mine for m in([ev[j][1]] if not ev[j][4] else [])]
        pool=[b+d for b in set(w)|set(at) for d in(-2,-1,1,2,-12,12,-1,1,19,24,7,-7)];r.shuffle(pool)
        cand+=[m for m in pool if m not in near][:r.choice((1,1,2))]
        ask+=[(m,False) for m in dict.fromkeys(cand) if m not in w and K0<=m<K0+K]
        dp=min(1.5,t0-prev[2]) if prev else 1.5;dn=min(1.5,nxt[2]-t0) if nxt else 1.5
        for k,wr in ask:
            e=at.get(k);y=1 if e is not None else 0
            if not y and k in near:continue
            if y and abs(e[0]-t0)>.1:continue
            c=4 if not wr else 2 if(k-12 in w or k-24 in w) else 3 if(k+12 in w or k+24 in w) else 1 if len(w)>1 else 0
            idx=place(w,k)+[x+73 for x in place(prev[0],k)] if prev else place(w,k)
            if nxt:idx=idx+[x+146 for x in place(nxt[0],k)]
            out.append((t0,k,y,(e[0]-t0) if y else 0.,hands.get(k,-1),c,(e[2]-top) if y else 0.,idx,(math.log2(max(dp,.06)/.25),math.log2(max(dn,.06)/.25),(k-60)/24),(cyc,k,tuple(sorted(w))) if wr else None))
    return out
class Maker:
    """batches; meta as in play.Maker. -> (events R, pedal, queries clip/t0/key/y/dt/class/level/cents/hand/group/varied, cond (Q,COND)); twins have the same group"""
    def __init__(s,meta,B,T,seed,Q):
        s.__dict__.update(meta);s.B=B;s.T=T;s.Q=Q;s.r=random.Random(seed);s.first={};q=s.hit0
        for c,n in HITS.items():s.first[c]=q;q+=n
    def batch(s):
        r=s.r;T=s.T;rows=[];G=[];ped=np.zeros(s.B,np.float32)
        for b in range(s.B):
            ev,steps,pd,kind=perform(T,r);ped[b]=pd;real=r.random()<s.preal
            if real:p=r.choices(range(len(s.real)),s.weight)[0];p=s.real[p];nl=int(s.nl[p])
            else:p=r.randrange(s.nsyn);nl=s.lay
            g=r.gauss(0,6);nd=r.choice([.5,1.5,3.,6.]);bl=r.uniform(0,nl);rel=r.uniform(.04,.25);vo=[r.gauss(0,1.) for _ in range(K)];dev=[r.gauss(0,nd) for _ in range(K)]
            shift=r.choice([-3,-2,-1,1,2,3]) if r.random()<.3 else 0;varied=r.random()<s.pvar
            for on,m,lv,off,_ in ev:
                # no two strikes of a string sound quite alike: another recording of it, or the same one unevenly filtered
                lv2=lv+vo[m-K0];ly=min(nl-1,max(0,int(bl+lv/4+(r.gauss(0,.6) if varied else 0))));k=min(K-1,max(0,m-K0+shift));ct=g+dev[m-K0]
                if real:
                    row=int(s.tbl[p,k,ly]);mid=float(s.mid[row])
                    if varied:row+=r.randrange(s.variants+1)*s.nreal
                else:row=s.syn0+(p*K+k)*s.lay+ly;mid=k+K0
                rr=rel*(1+max(0,(60-m)/24))
                rows.append((b,row,on*SR,2**((m-mid+ct/100)/12),10**(lv2/20),(off-on)*SR if m<90 else 1e9,2.302585/(rr*SR)))
            for q,c,w,lv,sp in noises(T,[e[:4] for e in ev],pd,r):rows.append((b,s.first[c]+w,q*SR,sp,10**(lv/20),1e9,0.))
            gs=g+r.gauss(0,2.);mine={}
            for i,(t0,k,y,dt,h,c,lv,idx,sc,name) in enumerate(queries(ev,steps,T,g,r)):
                mine.setdefault(i if name is None else name,[]).append(((b,t0*SR,k,y,dt,c,lv,gs+r.gauss(0,1.),h),(idx,sc),varied))
            G+=mine.values()
        r.shuffle(G);Q=[];C=[]
        for n,group in enumerate(G):
            if len(Q)+len(group)>s.Q:break
            for q,c,v in group:Q.append((*q,n,v));C.append(c)
        if not Q:return s.batch()
        cond=np.zeros((len(Q),COND),np.float32)
        for i,c in enumerate(C):cond[i,c[0]]=1;cond[i,-3:]=c[1]
        return np.array(rows,np.float64).reshape(-1,7),ped,np.array(Q,np.float64),cond
