"""Sampled and synthesised pianos, noises, the renderer (CUDA kernel by cupy, or plain torch) and the acoustics between piano and microphone."""
import math,lzma,numpy as np,torch,torch.nn.functional as F
from core import SR,K0,K
from play import HITS
L=66150
def decode(path):
    """int16 rows coded by pack.py"""
    q=np.load(path+'.pick.npz');n=tuple(q['shape']);by=np.frombuffer(lzma.decompress(open(path,'rb').read()),np.uint8).reshape(3,*n)
    z=by[0].astype(np.int32)|by[1].astype(np.int32)<<8|by[2].astype(np.int32)<<16;d=(z>>1)^-(z&1)
    e=np.cumsum(d,axis=1,dtype=np.int32);r=np.where(q['pick'][:,None],np.cumsum(e,axis=1,dtype=np.int32),e);return r.astype(np.int16)
def synth_bank(P,dev,lay=2,seed=None,CH=64):
    """P random physical-ish pianos -> (rows int16, onset sample of each row); row (p*K+key)*lay+layer"""
    rn=np.random.default_rng(seed);S=[];ONS=[];t=torch.arange(L,device=dev)/SR;pre=int(.012*SR);T=lambda v:torch.tensor(v,dtype=torch.float32,device=dev);tt=t-pre/SR
    for p in range(P):
        bs=rn.normal(0,.5);strike=rn.uniform(.09,.16);tilt=rn.uniform(5,14);hp=rn.uniform(40,260)
        eqf=rn.uniform(4,13.5,8);eqa=rn.normal(0,4,8);eqw=rn.uniform(.1,.8,8);uni=rn.choice([.15,.4,1.,4.],p=[.35,.35,.2,.1])
        stretch=rn.uniform(.3,1.6);dsc=rn.uniform(.4,1.8);bex=rn.uniform(.05,.6);kn=rn.uniform(-42,-12);jit=rn.uniform(.5,3.5);bl=rn.uniform(-32,-12);fl=rn.uniform(-75,-38)
        tsd=rn.choice([1.,3.,7.]);fcut=rn.uniform(6000,11000)
        keys=np.repeat(np.arange(K0,K0+K),lay);n=len(keys)
        f0=440*2**((keys-69)/12+(stretch*((keys-66)/40.)**3*12+rn.normal(0,tsd,n))/1200)
        Bh=np.exp(np.logaddexp(.0926*keys-13.64,-.0847*keys-5.82)+bs+rn.normal(0,.15,n))
        NP=40;k=np.arange(1,NP+1)[None];fk=k*f0[:,None]*np.sqrt(1+Bh[:,None]*k*k)
        bright=np.tile(rn.uniform(-5,0,lay),K)+rn.normal(0,1,n)
        comb=20*np.log10(np.abs(np.sin(np.pi*k*(strike+.02*rn.normal(size=(n,1)))))+.14)
        eq=sum(a*np.exp(-.5*((np.log2(fk)-c)/w)**2) for c,a,w in zip(eqf,eqa,eqw))
        a=comb+eq-(tilt-bright[:,None])*np.log2(np.maximum(k,1))*(.5+.5*(keys[:,None]-20)/60)-np.log2(1+fk/rn.uniform(800,3000))*rn.uniform(2,8)
        a-=10*np.log10(1+(hp/fk)**4)+rn.normal(0,jit,(n,NP));A=10**(a/20)*(fk<fcut)
        t60=np.clip(dsc*14*2**(-(keys[:,None]-36)/14)*(fk/f0[:,None])**(-bex)*np.exp(rn.normal(0,.35,(n,NP))),.15,25);mixs=10**(rn.uniform(-26,-4,(n,NP))/20);slow=rn.uniform(2,5,(n,NP))
        rise=np.clip(.0045*2**(-(keys-60)/24)*np.exp(rn.normal(0,.4,n)),.0005,.014)
        fq=[fk*2**(rn.normal(0,uni,(n,NP))/1200) for _ in range(2)];ph=[rn.uniform(0,6.28,(n,NP)) for _ in range(2)]
        A_,d_,ms_,d2_,f1,f2,p1,p2=[T(v) for v in(A,6.91/t60,mixs,6.91/t60/slow,fq[0]*2*np.pi,fq[1]*2*np.pi,ph[0],ph[1])]
        for c in range(0,n,CH):
            sl=slice(c,min(c+CH,n));m=sl.stop-sl.start;x=torch.zeros(m,L,device=dev);tp=tt.clamp(min=0)[None]
            env0=1-torch.exp(-(tp/T(rise[sl])[:,None])**1.5)
            for j in range(NP):
                if (A[sl,j]<1e-4*A[sl].max(1)).all():continue
                q=lambda v:v[sl,j:j+1]
                x+=q(A_)*(torch.sin(q(f1)*tt+q(p1))+.7*torch.sin(q(f2)*tt+q(p2)))*(torch.exp(-q(d_)*tp)*(1-q(ms_))+q(ms_)*torch.exp(-q(d2_)*tp))
            x*=env0*(tt>=0);g=x[:,:6000].pow(2).mean(1,keepdim=True).sqrt()
            def nz(q,lo,hi):
                sp=torch.fft.rfft(torch.randn(m,q,device=dev));ff=torch.arange(sp.shape[1],device=dev)*SR/q
                z=torch.fft.irfft(sp/(1+(ff/T(np.exp(rn.uniform(np.log(lo),np.log(hi),m)))[:,None])**2)*(ff/(ff+80)),q);return z/z.std(1,keepdim=True)
            dB=lambda c,sd:g*T(10**((c+rn.normal(0,sd,m))/20))[:,None]
            q=L//8//2*2;t8=tt[:q][None]-T(rn.uniform(-.008,.003,m))[:,None]     # knock, up to 8 ms early
            x[:,:q]+=nz(q,150,2500)*(t8>0)*torch.exp(-t8.clamp(min=0)/T(rn.uniform(.006,.05,m))[:,None])*dB(kn+8,4)
            x+=nz(L,300,4000)*(tt>=-.0005)*torch.exp(-tt.clamp(min=0)*6.9/T(np.exp(rn.uniform(-1.9,1.,m)))[:,None])*dB(bl,3)
            x+=nz(L,100,6000)*dB(fl,2)
            # onset: first millisecond within 30 dB of the loudest of 0.3 s, high-passed at 200 Hz (60 below MIDI 48): the definition of the sampled bank
            sp=torch.fft.rfft(x[:,:16384]*(1-torch.arange(16384,device=dev)/16384)[None]);ff=torch.arange(sp.shape[1],device=dev)*SR/16384
            h=T(np.where(keys[sl]>=48,200.,60.))[:,None];e=torch.fft.irfft(sp*(ff/h)**4/(1+(ff/h)**4),16384)[:,:int(.3*SR)]
            e=F.avg_pool1d(e.pow(2)[:,None],23,1,11)[:,0].sqrt();on=(e>=e.max(1,keepdim=True)[0]*10**-1.5).float().argmax(1)
            rms=torch.gather(x.pow(2).cumsum(1),1,torch.stack([on,on+6615],1));rms=((rms[:,1]-rms[:,0])/6615).clamp(min=1e-12).sqrt()
            S.append((x*(.08/rms)[:,None]).clamp(-.99,.99).mul(32767).short());ONS.append(on)
    return torch.cat(S),torch.cat(ONS)
def hit_bank(dev,seed=9):
    """rows of short noises in the order of play.HITS, onset at sample 0, loudest 50 ms at a note's level"""
    rn=np.random.default_rng(seed);n=int(1.2*SR);t=np.arange(n)/SR;out=[]
    lp=lambda x,f:np.fft.irfft(np.fft.rfft(x)/(1+(np.arange(n//2+1)*SR/n/f)**2),n)
    bp=lambda x,a,b:np.fft.irfft(np.fft.rfft(x)*((np.arange(n//2+1)*SR/n/a)**2/(1+(np.arange(n//2+1)*SR/n/a)**2))/(1+(np.arange(n//2+1)*SR/n/b)**2),n)
    def modal(k,lo,hi,dlo,dhi):
        f=np.exp(rn.uniform(np.log(lo),np.log(hi),k));d=np.exp(rn.uniform(np.log(dlo),np.log(dhi),k));a=np.exp(rn.normal(0,.8,k))
        return sum(A*np.sin(2*np.pi*F_*t+rn.uniform(0,6.28))*np.exp(-t/D) for F_,D,A in zip(f,d,a))
    for c,m in HITS.items():
        for i in range(m):
            w=rn.normal(size=n)
            if c=='knock':x=modal(rn.integers(3,9),50,rn.choice([300,900]),.008,.09)+rn.uniform(.1,2)*lp(w,rn.uniform(150,2500))*np.exp(-t/rn.uniform(.003,.03))*3
            elif c=='dish':x=modal(rn.integers(3,12),rn.choice([400,900,1500]),8500,.02,rn.choice([.1,.4]))+rn.uniform(0,.8)*w*np.exp(-t/rn.uniform(.001,.01))
            elif c=='click':x=(np.sin(2*np.pi*np.exp(rn.uniform(6.2,8.4))*t)*rn.uniform(0,1)+w*rn.uniform(.05,.6))*np.exp(-t/np.exp(rn.uniform(-7.5,-3.6)))
            elif c=='key':x=modal(rn.integers(2,7),40,rn.choice([250,700]),.01,.06)*rn.uniform(.2,1)+lp(w,rn.uniform(400,5000))*np.exp(-t/rn.uniform(.004,.04))*(1-np.exp(-t/rn.uniform(.0003,.01)))*2
            elif c=='beep':
                f=rn.choice([440,523.25,800,880,1000,1046.5,1200,1568,1760,2000,2093])*2**(rn.normal(0,.05)*(rn.random()<.5));d=rn.uniform(.008,.12)
                x=(np.sin(2*np.pi*f*t)+rn.uniform(0,.5)*np.sin(4*np.pi*f*t)+rn.uniform(0,.3)*np.sin(6*np.pi*f*t))*np.where(rn.random()<.5,np.exp(-t/d*2),np.clip((d-t)/.003,0,1))*np.clip(t/.001,0,1)
            else:
                a=np.exp(rn.uniform(5.5,8.3));d=rn.uniform(.01,.15);x=bp(w,a,min(9000,a*rn.uniform(1.5,4)))*np.clip(t/rn.uniform(.001,.04),0,1)*np.exp(-t/d)
                if rn.random()<.5:x=x+modal(4,150,3000,.01,.06)*rn.uniform(0,1)
            q=np.cumsum(np.concatenate([[0],x**2]));e=np.sqrt((q[1102:]-q[:-1102]).max()/1102);x=np.clip(x*.08/e,-.99,.99)*np.clip((1.2-t)/.1,0,1);out.append(np.pad(x,(0,L-n)))
    return torch.tensor(np.array(out)*32767,device=dev).short()
KERNEL=r'''
extern "C" __global__ void render(const short* w,const int* on,const int* clip,const int* row,const double* t,const float* ratio,const float* amp,const float* off,const float* rel,float* y,int n,int L){
  int e=blockIdx.y;int j=blockIdx.x*blockDim.x+threadIdx.x;double te=t[e];long long s0=(long long)floor(te-110.25);long long s=s0+j;if(s<0||s>=n)return;
  float tn=(float)((double)s-te);float pos=on[row[e]]+tn*ratio[e];if(pos<1.f||pos>=L-3)return;
  int i=(int)pos;float f=pos-i;const short* p=w+(long long)row[e]*L+i;float a=p[-1],b=p[0],c=p[1],d=p[2];
  float v=b+.5f*f*(c-a+f*(2.f*a-5.f*b+4.f*c-d+f*(3.f*(b-c)+d-a)));
  float env=fminf(1.f,fmaxf(0.f,(tn+110.25f)/22.f));if(tn>off[e]){float q=expf(-(tn-off[e])*rel[e]);if(q<1e-4f)return;env*=q;}
  atomicAdd(y+(long long)clip[e]*n+s,v*env*amp[e]*(1.f/32768.f));
}'''
_K=None
def render(w,on,R,B,n):
    """events R (N,7: clip,row,onset sample,speed,gain,release after samples,decay a sample) -> (B,n)"""
    global _K
    dev=w.device;y=torch.zeros(B,n,device=dev);R=torch.as_tensor(R)
    if len(R)==0:return y
    if dev.type=='cuda' and _K!='no':
        try:
            import cupy as cp
            if _K is None:_K=cp.RawKernel(KERNEL,'render')
            R=R.to(dev,non_blocking=True);i32=lambda c:R[:,c].int().contiguous();f32=lambda c:R[:,c].float().contiguous()
            a=[w,on,i32(0),i32(1),R[:,2].contiguous(),f32(3),f32(4),f32(5),f32(6),y]
            with cp.cuda.ExternalStream(torch.cuda.current_stream().cuda_stream):
                _K((65,len(R)),(1024,),tuple(cp.asarray(q) for q in a)+(np.int32(n),np.int32(w.shape[1])))
            return y
        except Exception as e:print('plain torch renderer:',repr(e)[:300],flush=True);_K='no'
    return render_torch(w,on,R.to(dev),B,n)
def render_torch(w,on,R,B,n):
    y=torch.zeros(B*n,device=w.device);j=torch.arange(66560,device=w.device)[None]
    for c in range(0,len(R),64):
        q=R[c:c+64];row=q[:,1].long();te=q[:,2:3];s=torch.floor(te-110.25).long()+j;tn=(s-te).float();pos=on[row].float()[:,None]+tn*q[:,3:4].float()
        ok=(s>=0)&(s<n)&(pos>=1)&(pos<L-3);i=pos.clamp(1,L-4).floor().long();f=pos-i;x=w[row].float();a,b,cc,d=[torch.gather(x,1,i+z) for z in(-1,0,1,2)]
        v=b+.5*f*(cc-a+f*(2*a-5*b+4*cc-d+f*(3*(b-cc)+d-a)));env=((tn+110.25)/22).clamp(0,1)*torch.exp(-(tn-q[:,5:6].float()).clamp(min=0)*q[:,6:7].float())
        ix=torch.where(ok,s+q[:,0:1].long()*n,torch.zeros_like(s));y.index_add_(0,ix.reshape(-1),(v*env*q[:,4:5].float()/32768*ok).reshape(-1))
    return y.view(B,n)
# ------------------------------------------------------------------ acoustics
def U(B,a,b,dev):return torch.rand(B,1,device=dev)*(b-a)+a
def pedal_bank(dev,N,M=8,seed=4):
    """spectra (M, N/2+1) of what undamped strings answer: a decaying tone on every partial of every key"""
    g=torch.Generator().manual_seed(seed);n=int(1.7*SR);t=torch.arange(n,device=dev)/SR;out=[]
    for _ in range(M):
        x=torch.zeros(n,device=dev)
        for m in range(24,104):
            h=torch.arange(1,9);f=440*2**((m-69)/12+float(torch.randn(1,generator=g))*3/1200)*h*(1+2e-4*h*h).sqrt();f=f[f<8000]
            if len(f)==0:continue
            k=len(f);a=torch.exp(torch.randn(k,generator=g)*.7)/h[:k]**.5;ph=torch.rand(k,generator=g)*6.28;d=6.9/(float(torch.rand(1,generator=g)*2+.6)*6*2**(-(m-36)/18))
            x+=(a.to(dev)[:,None]*torch.sin(6.283185*f.to(dev)[:,None]*t+ph.to(dev)[:,None])).sum(0)*torch.exp(-d*t)
        x*=(t>.004)*((1.7-t)/.2).clamp(0,1);out.append(torch.fft.rfft(x,N))
    o=torch.stack(out);return o/o.abs().pow(2).mean(1,keepdim=True).sqrt()
def act(x):
    q=F.avg_pool1d(x.pow(2)[:,None],2205,1102)[:,0];m=(q>.01*q.max(1,keepdim=True)[0]).float();return ((q*m).sum(1,keepdim=True)/m.sum(1,keepdim=True).clamp(min=1)).sqrt().clamp(min=1e-4)
def codec(y,r):
    """band-wise quantisation noise and spectral holes, like a lossy coder at a low rate"""
    B,n=y.shape;dev=y.device;N=r.choice([512,1024,2048]);h=N//2;w=torch.hann_window(N,device=dev).sqrt()
    X=torch.stft(y,N,h,window=w,return_complex=True);f=torch.arange(N//2+1,device=dev)*SR/N
    bark=13*torch.atan(.00076*f)+3.5*torch.atan((f/7500)**2);bi=bark.floor().long();nb=int(bi.max())+1
    M=torch.zeros(nb,N//2+1,device=dev);M[bi,torch.arange(N//2+1,device=dev)]=1;P=X.abs().pow(2);e=(M@P)/M.sum(1)[:,None].clamp(min=1);rms=(M.T@e).sqrt()
    snr=U(B,4,22,dev)[...,None]+f[None,:,None]/SR*2*U(B,-10,0,dev)[...,None];step=rms*10**(-snr/20)*3.46
    Q=torch.complex((X.real/step.clamp(min=1e-9)).round(),(X.imag/step.clamp(min=1e-9)).round())*step
    return torch.istft(Q,N,h,window=w,length=n)
def acoustics(y,ped,talk,PB,r,mild=None):
    """strings left open, room, speech, equaliser, phone band, noises, level control, coder, clipping; random for each clip. talk: 1-d speech; PB: pedal_bank"""
    B,n=y.shape;dev=y.device;N=(PB.shape[1]-1)*2;mild=torch.zeros(B,1,device=dev) if mild is None else mild;hard=1-mild;bern=lambda p:(torch.rand(B,1,device=dev)<p).float();rms=lambda x:x.pow(2).mean(1,keepdim=True).sqrt().clamp(min=1e-6)
    f=torch.arange(N//2+1,device=dev)[None]*SR/N+1e-3
    def speech(p,lo,hi):
        i=torch.randint(0,len(talk)-n,(B,1),device=dev)+torch.arange(n,device=dev)[None];return talk[i]*a*10**(U(B,lo,hi,dev)/20)*bern(p)
    pi=torch.randint(0,len(PB),(B,),device=dev);z=torch.fft.irfft(torch.fft.rfft(y,N)*PB[pi],N)[:,:n]
    y=y+z/rms(z)*rms(y)*10**(-U(B,11,32,dev)/20)*ped[:,None]
    a=act(y).clamp(min=.02)
    y=y+speech(.14,-26,3)*hard
    m=int(1.4*SR);t=torch.arange(m,device=dev)[None]/SR
    rt=torch.exp(U(B,math.log(.12),math.log(1.6),dev));rt=torch.where(mild>0,U(B,.15,.6,dev),rt);drr=torch.where(mild>0,U(B,0,14,dev),U(B,-5,16,dev))
    tail=torch.randn(B,m,device=dev)*10**(-3*t/rt)*(t>U(B,.001,.008,dev))
    ft=torch.fft.rfft(tail,N);ft=ft/(1+(f/U(B,1500,8000,dev))**2).sqrt()*(f/(f+60))
    ft=ft/ft.abs().pow(2).mean(1,keepdim=True).sqrt()*10**(-drr/20)*bern(.9)
    h=torch.zeros(B,m,device=dev);h[:,0]=1
    for _ in range(6):
        d=torch.randint(10,int(.025*SR),(B,1),device=dev);h.scatter_add_(1,d,torch.sign(torch.randn(B,1,device=dev))*10**(-U(B,7,22,dev)/20)*bern(.8))
    H=torch.fft.rfft(h,N)+ft
    lf=torch.log2(f);g=U(B,-2.5,2.5,dev)*(lf-9.5)
    for _ in range(6):g=g+torch.randn(B,1,device=dev)*3.5*torch.exp(-.5*((lf-U(B,5.5,13.5,dev))/U(B,.08,1.2,dev))**2)
    hpf=torch.exp(U(B,math.log(30),math.log(300),dev));lpf=torch.exp(U(B,math.log(3000),math.log(14000),dev));ph=bern(.6)
    E=10**(g/20)*(1-ph+ph/((1+(hpf/f)**4).sqrt()))*(1-ph+ph/((1+(f/lpf)**4).sqrt()))
    E=E*(1-bern(.2)*(f>U(B,3400,9000,dev)).float())
    y=torch.fft.irfft(torch.fft.rfft(y,N)*H,N)[:,:n]
    a=act(y)
    nz=torch.fft.irfft(torch.fft.rfft(torch.randn(B,n,device=dev))/torch.arange(1,n//2+2,device=dev).float().clamp(min=20*n/SR)[None]**(U(B,.0,.8,dev)),n);nz=nz/nz.std(1,keepdim=True)
    y=y+nz*a*10**(-torch.where(mild>0,U(B,25,58,dev),U(B,8,62,dev))/20)*(1+bern(.2)*U(B,0,.8,dev)*torch.sin(6.283*U(B,.3,6,dev)*torch.arange(n,device=dev)[None]/SR))
    tt=torch.arange(n,device=dev)[None]/SR;hf=torch.where(torch.rand(B,1,device=dev)<.6,50.,60.)
    hum=sum(U(B,0,1,dev)**2*torch.sin(6.283185*hf*k*tt+U(B,0,6,dev)) for k in(1,2,3,4,5,7,9))
    y=y+hum*a*10**(-torch.where(mild>0,U(B,25,50,dev),U(B,4,50,dev))/20)*bern(.18)
    y=y+speech(.12,-26,3)*hard                           # somebody near the microphone
    y=torch.fft.irfft(torch.fft.rfft(y,N)*E,N)[:,:n]
    a=act(y);ag=bern(.18)*hard;w=r.choice([1102,4410,11025])
    cs=F.pad(y.double().pow(2).cumsum(1),(w,0));q=((cs[:,w:]-cs[:,:-w])/w).clamp(min=0).sqrt().float()+.05*a
    y=y*(1-ag+ag*(a/q)**U(B,.3,.9,dev))
    y=y/y.abs().max(1,keepdim=True)[0].clamp(min=1e-6)
    c=bern(.24)*hard;th=U(B,.12,.6,dev);so=bern(.3);y=torch.where(c>0,torch.where(so>0,th*torch.tanh(y/th),torch.maximum(torch.minimum(y,th),-th)),y)
    k=max(1,B//5);i=torch.argsort(torch.rand(B,device=dev)+mild[:,0]*2)[:k];y[i]=codec(y[i],r)
    g=10**(U(B,-55,0,dev)/20);b=bern(.3)*hard;y=torch.where(b>0,(y*g*32767).round()/(32767*g),y)
    return y
