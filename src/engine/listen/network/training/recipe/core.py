"""Features, network, targets and loss of the shift-equivariant piano-note listener (torch, CPU or GPU).

Audio 22.05 kHz mono, levelled. Frame t of a net with hop H is centred on sample t*H; samples outside the recording are zero.
Layout inside the net is (channel, frame, clip, key), so that both convolutions are plain matrix products."""
import math,numpy as np,torch,torch.nn as nn,torch.nn.functional as F
SR=22050;K0=24;K=80;BPO=36;PADL=40;NB=390   # keys MIDI 24..103; log bin PADL is the centre of key K0, 3 bins a semitone
def freqs(cents=0.):
    return 440*2**((K0-69)/12+(np.arange(NB)-PADL)/BPO+cents/1200)
def fbank(N,cents=0.):
    """(N/2+1, NB) triangles on the power spectrum, half-width max(1 log bin, 1 FFT bin), weights sum to 1"""
    f=freqs(cents);b=np.arange(N//2+1)*SR/N
    hw=np.maximum(f*(2**(1/BPO)-1),SR/N);w=np.maximum(0,1-np.abs(b[None]-f[:,None])/hw[:,None])
    w/=np.maximum(w.sum(1,keepdims=True),1e-9);w[f>SR/2*.98]=0
    return torch.tensor(w.T.copy(),dtype=torch.float32)
_W={}
def _win(N,dev):
    if (N,dev) not in _W:_W[N,dev]=torch.hann_window(N,device=dev)/(N/4)
    return _W[N,dev]
_FB={}
def _fb(N,c,dev):
    if (N,c,dev) not in _FB:_FB[N,c,dev]=fbank(N,c).to(dev)
    return _FB[N,c,dev]
LEAD=512                                    # zeros put before the sound so that frames just before sample 0 exist
def logspec(y,N,hop,cents=None):
    """(B,n) -> (B,frames,NB); frame i is centred on sample i*hop; cents: one tuning for each clip or None"""
    X=torch.stft(y,N,hop,window=_win(N,y.device),center=True,pad_mode='constant',return_complex=True)
    P=(X.real**2+X.imag**2).transpose(1,2)
    f=_fb(N,0,y.device) if cents is None else torch.stack([_fb(N,c,y.device) for c in cents])
    return (torch.log10(P@f+1e-9)+6)/2      # -90 dB floor; a 0 dB sine is 3
def features(y,cents=None):
    """the three spectra: 4096 at hop 256, 1024 at hop 256, 256 at hop 128, each with LEAD zeros before"""
    z=F.pad(y,(LEAD,LEAD))
    return logspec(z,4096,256,cents),logspec(z,1024,256,cents),logspec(z,256,128,cents)
def level(y):
    """active RMS -> -20 dBFS, used in training and inference"""
    q=F.avg_pool1d(y.pow(2)[:,None],2205,1102)[:,0];mx=q.max(1,keepdim=True)[0];k=(q>.0025*mx).float()
    a=((q*k).sum(1,keepdim=True)/k.sum(1,keepdim=True).clamp(min=1)).sqrt().clamp(min=1e-5)
    return y*(.1/a)
# ------------------------------------------------------------------ the net
OFF=(-28,-24,-19,-12,-7,-5,-4,-3,-2,-1,0,1,2,3,4,5,7,12,19,24)   # key offsets heard by each key
HL=(.5,1,1.5,2,2.5,3,4,5,6,7,8);HM=(.5,1,2,3,4,5,6,8);HS=(1,2,3,4,6,8)
sh=lambda h:round(BPO*math.log2(h))
CFG={512:dict(M=(-1,0),S=(-2,-1,0,1),MB=(-1,1),J=(-3,-2,-1,0,1)),256:dict(M=(0,),S=(-1,0),MB=(-1,0,1),J=(-3,-2,-1,0,1,2))}
NBAND=8;BAND=[(i*NB//NBAND,(i+1)*NB//NBAND) for i in range(NBAND)]
def taps(hop):
    """[(spectrum 0/1/2, sub-frame, bin offset from the key's centre bin)]"""
    c=CFG[hop];o=[(0,0,sh(h)+j) for h in HL for j in(-1,0,1)]+[(0,0,-2),(0,0,2)]
    o+=[(1,s,sh(h)+j) for s in c['M'] for h in HM for j in c['MB']]
    return o+[(2,s,sh(h)) for s in c['S'] for h in HS]
class Gather(nn.Module):
    """spectra -> (taps, frames, B, K) and band means (bands, frames, B), both minus 1.5"""
    def __init__(s,hop):
        super().__init__();s.hop=hop;c=CFG[hop];s.ch=[(0,0)]+[(1,i) for i in c['M']]+[(2,i) for i in c['S']]
        key=3*np.arange(K)[None]+PADL
        for n,ch in enumerate(s.ch):
            o=np.array([b for(k,i,b) in taps(hop) if (k,i)==ch])[:,None]
            s.register_buffer('i%d'%n,torch.tensor((key+o).reshape(-1)),persistent=False)
        s.n=len(taps(hop));bm=np.zeros((NB,NBAND),np.float32)
        for i,(a,b) in enumerate(BAND):bm[a:b,i]=1/(b-a)
        s.register_buffer('bm',torch.tensor(bm),persistent=False)
    def forward(s,spec,Tf):
        o=[];g=[]
        for n,(k,i) in enumerate(s.ch):
            st=s.hop//(256,256,128)[k];a=LEAD//(256,256,128)[k]+i
            x=spec[k][:,a:a+st*(Tf-1)+1:st]-1.5                 # (B,Tf,NB)
            o.append(x[...,getattr(s,'i%d'%n)].view(x.shape[0],Tf,-1,K).permute(2,1,0,3));g.append((x@s.bm).permute(2,1,0))
        return torch.cat(o),torch.cat(g)
_E={}
def _basis(key,dev):
    if (key,dev) not in _E:
        if key[0]=='k':
            e=torch.zeros(len(OFF),K,K)
            for j,o in enumerate(OFF):
                k=torch.arange(max(0,-o),min(K,K-o));e[j,k+o,k]=1     # v[k] += w*u[k+o]
        else:
            _,T,J,d=key;e=torch.zeros(len(J),T,T)
            for j,q in enumerate(J):
                t=torch.arange(max(0,-q*d),min(T,T-q*d));e[j,t,t+q*d]=1   # u[t] += w*x[t+q*d]
        _E[key,dev]=e.to(dev).reshape(e.shape[0],-1)
    return _E[key,dev]
class _Norm(torch.autograd.Function):
    """batch normalisation of (C,L) over L, statistics in float32"""
    @staticmethod
    def forward(c,x,w,b,eps):
        v,m=torch.var_mean(x.float(),1,unbiased=False,keepdim=True);r=(v+eps).rsqrt();h=((x-m)*r).to(x.dtype)
        c.save_for_backward(h,w,r);return (h*w[:,None]+b[:,None]).to(x.dtype),m,v
    @staticmethod
    def backward(c,g,_m,_v):
        h,w,r=c.saved_tensors;n=g.shape[1];gb=g.sum(1,dtype=torch.float32);gw=(g*h).sum(1,dtype=torch.float32)
        return torch.addcmul(g-(gb/n)[:,None].to(g.dtype),h,-(gw/n)[:,None].to(g.dtype))*(w[:,None]*r).to(g.dtype),gw,gb,None
FAST=False
class BN(nn.BatchNorm1d):
    def forward(s,x):
        z=x.reshape(x.shape[0],-1)
        if not (s.training and FAST):return super().forward(z[None]).view(x.shape)
        y,m,v=_Norm.apply(z,s.weight,s.bias,s.eps)
        with torch.no_grad():
            s.running_mean.lerp_(m[:,0].detach(),s.momentum);s.running_var.lerp_(v[:,0].detach(),s.momentum);s.num_batches_tracked.add_(1)
        return y.view(x.shape)
class Block(nn.Module):
    """x + ReLU(BN(W . keys(time(x)))): two depthwise convolutions, one dense product"""
    def __init__(s,C,J,d):
        super().__init__();s.J=J;s.d=d
        a=torch.randn(C,len(J))*.15;a[:,J.index(0)]+=1;b=torch.randn(C,len(OFF))*.15;b[:,OFF.index(0)]+=1
        s.t=nn.Parameter(a);s.k=nn.Parameter(b);s.w=nn.Parameter(torch.randn(C,C)*(1.4/C)**.5);s.bn=BN(C)
    def forward(s,x,mask):
        C,T,B,_=x.shape
        Mt=(s.t@_basis(('t',T,s.J,s.d),x.device)).view(C,T,T);Mk=(s.k@_basis(('k',),x.device)).view(C,K,K)
        u=Mt@x.reshape(C,T,B*K);v=u.view(C,T*B,K)@Mk
        y=F.relu(s.bn(s.w@v.view(C,-1))).view(x.shape)
        return x+(y if mask is None else y*mask)
class Net(nn.Module):
    def __init__(s,hop=512,C=48,dil=(1,1,2,2)):
        super().__init__();s.cfg=dict(hop=hop,C=C,dil=tuple(dil));s.hop=hop;s.g=Gather(hop);n=s.g.n
        s.stem=nn.Parameter(torch.randn(C,n)*(2/n)**.5);s.band=nn.Parameter(torch.randn(C,NBAND*len(s.g.ch))*.02)
        s.pos=nn.Parameter(torch.zeros(C,1,1,K));s.bn=BN(C)
        s.b=nn.ModuleList([Block(C,CFG[hop]['J'],d) for d in dil]);s.out=nn.Linear(C,4);nn.init.normal_(s.out.weight,0,.1)
        s.out.bias.data[0]=-4
    def forward(s,spec,Tf,mask=None):
        """spectra -> (4, frames, B, K): onset logit, offset (frames), level/6 dB, sounding logit; mask (1,1,B,K) of keys in range"""
        with torch.autocast(spec[0].device.type,enabled=False):
            x,g=s.g(spec,Tf);C=s.stem.shape[0]
            x=(s.stem@x.reshape(x.shape[0],-1)).view(C,Tf,-1,K)+s.pos+(s.band@g.reshape(g.shape[0],-1)).view(C,Tf,-1,1)
        x=F.relu(s.bn(x))
        if torch.is_autocast_enabled():x=x.bfloat16()
        if mask is not None:mask=mask.to(x.dtype);x=x*mask
        for b in s.b:x=b(x,mask)
        with torch.autocast(spec[0].device.type,enabled=False):
            return (s.out.weight@x.float().reshape(C,-1)+s.out.bias[:,None]).view(4,Tf,-1,K)
    def macs(s,keys=K):
        """multiply-accumulates a second of sound, features apart"""
        C=s.cfg['C'];b=len(s.b);J=len(CFG[s.hop]['J']);per=s.g.n*C+b*(J*C+len(OFF)*C+C*C)+4*C
        return (per*keys+NBAND*len(s.g.ch)*C)*SR/s.hop/1e6
SIGMA={512:.6,256:.8,128:.8}                # of the onset bump, frames
NORM={h:math.sqrt(2*math.pi)*v for h,v in SIGMA.items()}
def frames(n,hop):return n//hop+1
# ------------------------------------------------------------------ targets and loss
def targets(ev,B,Tf,hop,dev):
    """ev (N,5) tensor: clip, onset s, midi, level dB re the clip's median, release s -> dict of (Tf,B,K)"""
    b,k=ev[:,0].long(),ev[:,2].long()-K0;c=ev[:,1]*SR/hop;N=len(ev);sz=Tf*B*K;i=torch.arange(-3,4,device=dev)[None]
    fr=c.round().long()[:,None]+i;d=c[:,None].float()-fr.float();v=torch.exp(-.5*(d/SIGMA[hop])**2)
    ok=(fr>=0)&(fr<Tf);cell=(fr.clamp(0,Tf-1)*B+b[:,None])*K+k[:,None];cell,v,d=cell[ok],v[ok],d[ok]
    on=torch.zeros(sz,device=dev).scatter_reduce_(0,cell,v,'amax')
    best=v>=on[cell]-1e-6;off=torch.zeros(sz,device=dev);off[cell[best]]=d[best]
    om=torch.zeros(sz,device=dev);om[cell[best]]=(d[best].abs()<=(1.5 if hop==512 else 2.5)).float()
    lv=torch.zeros(sz,device=dev);lv[cell[best]]=(ev[:,3:4].float().expand(N,7)[ok]/6)[best]
    s=torch.zeros((Tf+1)*B*K,device=dev);a=c.round().long().clamp(0,Tf);z=(ev[:,4]*SR/hop).round().long().clamp(0,Tf);z=torch.maximum(a,z);one=torch.ones(N,device=dev)
    s.scatter_add_(0,(a*B+b)*K+k,one);s.scatter_add_(0,(z*B+b)*K+k,-one)
    V=lambda q:q.view(Tf,B,K)
    return dict(on=V(on),off=V(off),om=V(om),lv=V(lv),fr=(s.view(Tf+1,B,K)[:Tf].cumsum(0)>.5).float())
GHOST=(12,19,24,28,-12,-19,-24)
def loss_fn(o,tg,mask,soft=None,ghost=1.5):
    """onset BCE (heavier at onsets and at harmonic relatives of an onset), offset and level L1, sounding BCE; soft: a larger net's onset probability, mixed half and half into the target"""
    on=tg['on'];o=o.float();near=F.max_pool2d(on.permute(1,2,0).unsqueeze(1),(1,3),1,(0,1))[:,0].permute(2,0,1)
    g=torch.zeros_like(on)
    for q in GHOST:
        if q>0:g[...,q:]=torch.maximum(g[...,q:],near[...,:-q])
        else:g[...,:q]=torch.maximum(g[...,:q],near[...,-q:])
    m=mask[0].expand_as(on);w=(1+4*on)*(1+ghost*g)*m
    s=(tg['om']*m).sum().clamp(min=1);L=F.binary_cross_entropy_with_logits
    a=(L(o[0],on if soft is None else .5*on+.5*soft,reduction='none')*w).sum()/s;om=tg['om']*m
    b=(om*(o[1]-tg['off']).abs()).sum()/s;c=(om*(o[2]-tg['lv']).abs()).sum()/s
    d=(L(o[3],tg['fr'],reduction='none')*m).sum()/m.sum().clamp(min=1)
    return a,b,c,d
# ------------------------------------------------------------------ tuning and picking
def tuning(y):
    """cents of each clip: circular mean over spectral peaks 150-1500 Hz above 3 % of the frame's loudest"""
    N=8192;w=torch.hann_window(N,periodic=False,device=y.device)
    X=torch.stft(y,N,2048,window=w,center=False,return_complex=True).abs().transpose(1,2);lo,hi=int(150*N/SR),int(1500*N/SR)
    m=X[...,lo:hi];a,c=X[...,lo-1:hi-1],X[...,lo+1:hi+1];pk=(m>a)&(m>=c)&(m>.03*m.max(-1,keepdim=True)[0])&(m>1e-6)
    la,lm,lc=[(q+1e-12).log() for q in(a,m,c)];d=.5*(la-lc)/(la-2*lm+lc).clamp(max=-1e-9)
    f=(torch.arange(lo,hi,device=y.device)+d)*SR/N;ph=2*math.pi*12*torch.log2(f.clamp(min=1)/440);wt=m.sqrt()*pk
    return torch.atan2((wt*ph.sin()).sum((1,2)),(wt*ph.cos()).sum((1,2)))/(2*math.pi)*100
def pick(o,hop,lo=.1):
    """o (4,Tf,B,K) -> for each clip [(time s, midi, score, level dB)], same key at least 60 ms apart"""
    p=torch.sigmoid(o[0]);r={512:1,256:2,128:3}[hop];q=p.permute(1,2,0).unsqueeze(1)
    mx=F.max_pool2d(q,(1,2*r+1),1,(0,r))[:,0].permute(2,0,1);t,b,k=((p==mx)&(p>lo)).nonzero(as_tuple=True)
    B=p.shape[1];out=[[] for _ in range(B)]
    if len(t)==0:return out
    W=torch.stack([torch.where((t+i>=0)&(t+i<p.shape[0]),p[(t+i).clamp(0,p.shape[0]-1),b,k],torch.zeros_like(p[t,b,k])) for i in(-2,-1,0,1,2)])
    O=torch.stack([i+o[1][(t+i).clamp(0,p.shape[0]-1),b,k] for i in(-2,-1,0,1,2)]);w2=W[1:4]**2 if hop==512 else W**2;O=O[1:4] if hop==512 else O
    tt=((t+(w2*O).sum(0)/w2.sum(0))*hop/SR);sc=(W.sum(0)/NORM[hop]).clamp(max=1)
    lv=o[2][t,b,k]*6;R=torch.stack([b.float(),tt.double().float(),k.float()+K0,sc,lv],1).double().cpu().numpy();R[:,1]=tt.double().cpu().numpy()
    R=R[np.lexsort((R[:,1],R[:,0]))];last={}
    for bb,a,m,s,l in R:
        bb=int(bb);m=int(m);j=last.get((bb,m))
        if j is not None and a-out[bb][j][0]<.06:
            if s>out[bb][j][2]:out[bb][j]=(a,m,s,l)
            continue
        last[bb,m]=len(out[bb]);out[bb].append((a,m,s,l))
    return out
