"""The closer look: features of one key at one moment, and the network that says struck or not, and when (torch)."""
import math,torch,torch.nn as nn,torch.nn.functional as F
SR=22050
OWN=(1,2,3,4,5,6,7,8);SUB=(.5,1.5,2.5,3.5,1/3,2/3,4/3,5/3);NEAR=tuple(h*2**(d/12) for h in(1,2,3) for d in(-1,1))
NS=len(OWN)+len(SUB)+len(NEAR)
LONG=(4096,[-3072,-2048,-1024,0,1024,2048,3072,4096]);MID=(1024,list(range(-1536,3073,256)));SHORT=(256,list(range(-1280,1921,128)))
WIDTH=2.2e6                     # a window is at most this many samples over its frequency: half its lobe is 2 % of it
TOP=10000.
def strips(key,cents,lnb):
    """(Q,) key, cents, ln of the stiffness factor -> (Q,NS) Hz. Partials n f0 sqrt(1+B n^2); B: two lines in its logarithm (Rigaud, David & Daudet 2013)"""
    f0=440*2**((key-69+cents/100)/12);Bk=torch.exp(torch.logaddexp(.0926*key-13.64,-.0847*key-5.82)+lnb)
    st=lambda h,B:h*torch.sqrt(1+B*h*h)
    o=[f0*st(h,Bk) for h in OWN]
    o+=[f0*st(h,Bk*.75) for h in SUB]
    o+=[f0*h for h in NEAR]
    return torch.stack(o,1)
def view(y,clip,t0,freq,spec):
    """-> (Q,frames,NS) levels, 0 at -80 dB, 2 at a full-scale sine"""
    N,at=spec;Q=len(t0);dev=y.device;h=N//2
    lo=at[0]-h;L=at[-1]+h-lo;P=16384
    z=F.pad(y,(P,P)).reshape(-1);n=y.shape[1]+2*P
    i=(clip*n+P+t0+lo)[:,None]+torch.arange(L,device=dev)[None]
    seg=z[i].unfold(1,N,at[1]-at[0])                      # (Q,frames,N)
    m=torch.arange(-h,N-h,device=dev,dtype=torch.float32)[None,:,None]
    ne=(WIDTH/freq).clamp(max=N)[:,None];w=(.5+.5*torch.cos(6.2831853*m/ne))*(m.abs()<ne/2)*4/ne
    p=(6.2831853/SR)*freq[:,None]*m
    E=torch.cat([w*torch.cos(p),w*torch.sin(p)],2)        # (Q,N,2NS)
    X=torch.bmm(seg.contiguous(),E);P2=X[...,:NS]**2+X[...,NS:]**2
    x=(torch.log10(P2+1e-9)+4)/2
    return torch.where(freq[:,None]<TOP,x,torch.full_like(x,-2.5))
def features(y,clip,t0,key,cents,lnb):
    f=strips(key,cents,lnb);return [view(y,clip,t0,f,s) for s in(LONG,MID,SHORT)]
class Look(nn.Module):
    def __init__(s,C=16,H=32,D=80,E=32,COND=222,S=80,G=64):
        super().__init__();s.cfg=dict(C=C,H=H,D=D,E=E,COND=COND,S=S,G=G)
        s.a=nn.ModuleList(nn.Linear(NS,H) for _ in range(3));s.b=nn.ModuleList(nn.Linear(H,C) for _ in range(3))
        s.c=nn.ModuleList(nn.Conv1d(C,C,3,stride=2) for _ in range(2))
        n=len(LONG[1])+(len(MID[1])-1)//2+(len(SHORT[1])-1)//2
        s.d=nn.Linear(n*C,D);s.e=nn.Linear(COND,E);s.s=nn.Linear(S,48);s.f=nn.Linear(D+E+48,G);s.h=nn.Linear(G,32);s.g=nn.Linear(32,3)
        s.k=nn.Linear(D+2*48+1+16*NS,64);s.l=nn.Linear(64,32);s.m=nn.Linear(32,32,bias=False);nn.init.zeros_(s.m.weight)
    def forward(s,x,cond,said,group=None):
        """-> (Q,3) without twins and, if group (Q,) says whose twin is whose, with them"""
        o=[]
        for i in range(3):
            u=F.relu(s.b[i](F.relu(s.a[i](x[i]))))         # (Q,T,C)
            if i:u=F.relu(s.c[i-1](u.transpose(1,2))).transpose(1,2)
            o.append(u.flatten(1))
        u=F.relu(s.d(torch.cat(o,1)));v=F.relu(s.e(cond));q=F.relu(s.s(said));j=s.h(F.relu(s.f(torch.cat([u,v,q],1))))
        # what the blind ear said stands unless the look says otherwise
        told=F.pad(said[:,:2],(0,1));alone=s.g(F.relu(j))+told
        if group is None:return alone
        # where a twin was struck, and where it was not: how far is this from it, at each frequency, while it sounds?
        p=torch.sigmoid(alone[:,:1]).detach();w=levels(x);t,has=others(torch.cat([p,w*p,w*(1-p),q],1),group);n=w.shape[1]
        pm,a,b,qm=t[:,:1],t[:,1:n+1],t[:,n+1:2*n+1],t[:,2*n+1:]
        z=F.relu(s.l(F.relu(s.k(torch.cat([u,q,w*pm-a,w*(1-pm)-b,qm,pm],1)))))*has
        return alone,s.g(F.relu(j+s.m(z)))+told,pm,has
LATER=((6,8),(8,11),(11,15),(15,19))
def levels(x):
    """the three views -> (Q,8*NS): the long one from the moment on, the middle one in four parts from just before it on"""
    return torch.cat([x[0][:,3:7].flatten(1)]+[x[1][:,a:b].mean(1) for a,b in LATER],1)
def others(x,group):
    """rows -> the mean of the other rows of the same group, and whether there are any"""
    n=int(group.max())+1;one=torch.zeros(n,device=x.device).index_add_(0,group,torch.ones(len(x),device=x.device))[group][:,None]-1
    sm=torch.zeros(n,x.shape[1],device=x.device,dtype=x.dtype).index_add_(0,group,x)[group]-x;has=(one>.5).float()
    return sm/one.clamp(min=1)*has,has
def loss(o,y,dt,w):
    """dt in units of 10 ms; o: logit, mean, ln of the spread"""
    b=F.binary_cross_entropy_with_logits(o[:,0],y,reduction='none')
    lb=o[:,2].clamp(-3,3);t=((dt-o[:,1]).abs()*torch.exp(-lb)+lb)*y
    return (b*w).mean(),t.sum()/y.sum().clamp(min=1)
