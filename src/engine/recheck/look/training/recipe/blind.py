"""The blind listener as it lies in the repository (weights.ts, batch norm merged), and what it says about a key at a moment (torch)."""
import re,base64,numpy as np,torch,torch.nn.functional as F,core
ASK=(0,-12,12,-24,24,-19,19,-7,7,-5,5,-4,4,-3,3,-2,2,-1,1)
HOP=512;FULL=1.504;NEAR=4
FLOOR=.005
class Blind:
    def __init__(s,dev,path='weights.ts'):
        t=open(path).read();v=np.frombuffer(base64.b64decode(re.search(r"float16Base64:\s*'([^']+)'",t).group(1)),'<f2').astype(np.float32)
        i=[0]
        def take(*shape):
            n=int(np.prod(shape));a=torch.tensor(v[i[0]:i[0]+n].reshape(shape),device=dev);i[0]+=n;return a
        s.g=core.Gather(HOP).to(dev);C=48;s.stem=take(C,s.g.n);s.band=take(C,core.NBAND*len(s.g.ch));s.pos=take(core.K,C);s.b=[]
        s.dil=(1,1,2,2,1);s.J=core.CFG[HOP]['J']
        for d in s.dil:s.b.append((take(C,len(s.J)),take(C,len(core.OFF)),take(C,C),take(C)))
        s.ow=take(4,C);s.ob=take(4);assert i[0]==len(v),(i[0],len(v))
    @torch.no_grad()
    def __call__(s,y):
        """(B,n) levelled -> (4,Tf,B,K)"""
        Tf=core.frames(y.shape[1],HOP);x,g=s.g(core.features(y),Tf);C=48;B=y.shape[0];K=core.K
        x=F.relu((s.stem@x.reshape(x.shape[0],-1)).view(C,Tf,B,K)+s.pos.T[:,None,None,:]+(s.band@g.reshape(g.shape[0],-1)).view(C,Tf,B,1))
        for (t,k,w,b),d in zip(s.b,s.dil):
            Mt=(t@core._basis(('t',Tf,s.J,d),y.device)).view(C,Tf,Tf);Mk=(k@core._basis(('k',),y.device)).view(C,K,K)
            u=(Mt@x.reshape(C,Tf,B*K)).view(C,Tf*B,K)@Mk
            x=x+F.relu(w@u.reshape(C,-1)+b[:,None]).view(x.shape)
        return (s.ow@x.reshape(C,-1)+s.ob[:,None]).view(4,Tf,B,K)
@torch.no_grad()
def said(o,clip,t0,key):
    """outputs (4,Tf,B,K), queries -> (Q,len(ASK),4): belief logit, moment less t0 in 10 ms, level/6 dB, sounding; what the ear's candidates say within 90 ms"""
    Tf,B,K=o.shape[1:];dev=o.device
    ks=(key-core.K0)[:,None]+torch.tensor(ASK,device=dev)[None];ok=(ks>=0)&(ks<K);ks=ks.clamp(0,K-1).long()
    f0=(t0.double()/HOP).round().long();fr=(f0[:,None]+torch.arange(-NEAR-2,NEAR+3,device=dev)[None])       # Q, 2N+5
    inn=(fr>=0)&(fr<Tf);fr=fr.clamp(0,Tf-1)
    ix=((fr[:,None,:]*B+clip[:,None,None])*K+ks[:,:,None])                                                    # Q,A,F
    take=lambda c:o[c].reshape(-1)[ix]
    p=torch.sigmoid(take(0))*inn[:,None]
    c=p[...,2:-2];m=c.argmax(-1,keepdim=True)+2                                                                # frame of the peak
    g=lambda a,d:torch.gather(a,2,m+d)[...,0]
    P=[g(p,d) for d in(-2,-1,0,1,2)];off=take(1);score=(sum(P)/FULL).clamp(max=1)
    w=[q*q for q in P[1:4]];mom=sum(wi*(torch.gather(fr[:,None,:].expand_as(p),2,m+d)[...,0]+g(off,d)) for wi,d in zip(w,(-1,0,1)))/sum(w).clamp(min=1e-12)
    t=(mom*HOP-t0[:,None].float())/core.SR*100
    lv=g(take(2),0);sn=torch.sigmoid(g(take(3),2));sc=score.clamp(FLOOR,.995)
    there=ok&(score>FLOOR)&(t.abs()<9)
    r=torch.stack([torch.log(sc/(1-sc)),t,lv,sn],-1);none=torch.tensor([np.log(FLOOR/(1-FLOOR)),0,-3,0],device=dev,dtype=r.dtype)
    return torch.where(there[...,None],r,none)
def usual(s,clip,hand,struck,B):
    """mean belief and level of what is heard of each hand of a clip, without the query's own: (Q,4) own hand, other hand; -9 where none"""
    ok=(struck>.5)&(s[:,0,0]>-.85)&(hand>=0);i=(clip*2+hand.clamp(min=0)).long();n=torch.zeros(2*B,device=s.device);sm=torch.zeros(2*B,2,device=s.device)
    v=s[:,0,[0,2]]*ok[:,None];n.index_add_(0,i,ok.float());sm.index_add_(0,i,v)
    def ref(j,own):
        k=n[j]-(ok.float() if own else 0);q=(sm[j]-(v if own else 0))/k.clamp(min=1)[:,None]
        return torch.where((k>=2)[:,None],q,torch.tensor([[0.,-.5]],device=s.device))
    return torch.cat([ref(i,True),ref(clip.long()*2+(1-hand.clamp(min=0)).long(),False)],1)
