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
    def forward(s,x,cond,said):
        o=[]
        for i in range(3):
            u=F.relu(s.b[i](F.relu(s.a[i](x[i]))))         # (Q,T,C)
            if i:u=F.relu(s.c[i-1](u.transpose(1,2))).transpose(1,2)
            o.append(u.flatten(1))
        u=F.relu(s.d(torch.cat(o,1)));v=F.relu(s.e(cond));q=F.relu(s.s(said));o=s.g(F.relu(s.h(F.relu(s.f(torch.cat([u,v,q],1))))))
        # what the blind ear said stands unless the look says otherwise
        return torch.stack([o[:,0]+said[:,0],o[:,1]+said[:,1],o[:,2]],1)
def loss(o,y,dt,w):
    """dt in units of 10 ms; o: logit, mean, ln of the spread"""
    b=F.binary_cross_entropy_with_logits(o[:,0],y,reduction='none')
    lb=o[:,2].clamp(-3,3);t=((dt-o[:,1]).abs()*torch.exp(-lb)+lb)*y
    return (b*w).mean(),t.sum()/y.sum().clamp(min=1)
