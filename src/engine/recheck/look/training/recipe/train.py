"""python3 train.py min=8 seed=1 out=DIR [init=look.pt]: trains the closer look and prints its table on the two pianos kept out"""
import sys,time,math,random,queue,threading,contextlib,lzma,numpy as np,torch,torch.multiprocessing as mp
from steps import Maker,COND
a=dict(x.split('=',1) for x in sys.argv[1:])
TRAIN=[0,2,4,5,6];WEIGHT=[1.,1.,.8,.5,.7]
def work(q,meta,B,T,seed,Q):
    m=Maker(meta,B,T,seed,Q)
    while True:q.put(m.batch())
def uneven(x,sd=1.5):
    """rows of notes -> the same through filters that lift and lower each partial by some dB at random (minimum phase): as much as two strikes of one string differ, by our own guess"""
    n=131072;L=x.shape[1];o=[];dev=x.device;f=torch.fft.rfftfreq(n,1/22050,device=dev).clamp(min=20).log2()[None]
    for c in range(0,len(x),20):
        y=x[c:c+20].float();B=len(y);g=torch.zeros(B,n//2+1,device=dev)
        for _ in range(60):g+=torch.randn(B,1,device=dev)*sd*torch.exp(-.5*((f-torch.rand(B,1,device=dev)*8.5-5)/(.04+.12*torch.rand(B,1,device=dev)))**2)
        ce=torch.fft.irfft(g/8.686+0j,n);ce[:,1:n//2]*=2;ce[:,n//2+1:]=0          # folded cepstrum
        o.append(torch.fft.irfft(torch.fft.rfft(y,n)*torch.exp(torch.fft.rfft(ce)),n)[:,:L].clamp(-32767,32767).short())
    return torch.cat(o)
def table(O):
    y,dt,c,lv,has,pm,var,mild=O[:,9],O[:,10],O[:,11],O[:,12],O[:,17],O[:,18],O[:,20],O[:,22]
    for k,nm in enumerate(('alone','chord','octave above','octave below','not written')):
        for tn,sub in (('all',has>-1),('twins',has>.5),('twins mild',(has>.5)&(mild>.5)),('twins mild, unlike',(has>.5)&(var>.5)&(mild>.5)),('twins mild, same',(has>.5)&(var<.5)&(mild>.5)),('no twins mild',(has<.5)&(mild>.5))):
            s=(c==k)&sub
            if tn!='all' and k not in(1,2,3):continue
            for who,j in (('old',6),('alone',3),('twin',0)):
                lo=O[:,j];e=(O[:,j+1]-dt)*10;p1=lo[s&(y>.5)];p0=lo[s&(y<.5)]
                if len(p1)<50 or len(p0)<50:continue
                ee=e[s&(y>.5)&(O[:,13]>-.85)];lb=np.exp(np.clip(O[:,j+2],-3,3))[s&(y>.5)&(O[:,13]>-.85)]
                print('%-13s %-18s %-5s struck %6d absent %5d found at invented .5 1 2 5 %%: %s thr2 %.2f  when (ear found): SD %.2f |e| 50 %.2f 90 %.2f'%(nm,tn,who,len(p1),len(p0),' '.join('%.3f'%(p1>np.quantile(p0,1-f)).mean() for f in(.005,.01,.02,.05)),np.quantile(p0,.98),ee.std(),*np.quantile(abs(ee),[.5,.9])))
    for who,j in (('old',6),('alone',3),('twin',0)):
        lo=O[:,j];s=(c==2)&(y>.5)&(has>.5);ab=lo[(c==2)&(y<.5)&(has>.5)];th=np.quantile(ab,.98) if len(ab) else 0;row=[]
        for l0,l1 in((-30,-9),(-9,-6),(-6,-3),(-3,-1),(-1,1)):
            q=s&(lv>=l0)&(lv<l1)
            if q.sum()>30:row.append('%d..%d dB %.3f of %d'%(l0,l1,(lo[q]>th).mean(),q.sum()))
        print('  octave above with twins,',who,'; '.join(row))
def main():
    t0=time.time();mins=float(a.get('min',8));B=int(a.get('B',22));QN=int(a.get('Q',2048));dev=a.get('dev','cuda');cuda=dev=='cuda';seed=int(a.get('seed',1));out=a.get('out','.');lr=float(a.get('lr',2.5e-3));P=int(a.get('P',40));nsam=int(a.get('n',179200));lmin=.01;VAR=3
    md=np.load('data/notes.npz');n0=len(md['on']);lay=2;meta=dict(tbl=md['tbl'],mid=md['mid'],nl=md['nl'],real=TRAIN,weight=WEIGHT,preal=.7,nsyn=P,lay=lay,nreal=n0,variants=VAR,pvar=.6,syn0=n0*(1+VAR),hit0=n0*(1+VAR)+P*80*lay)
    nw=int(a.get('workers',10));q=mp.Queue(24);ws=[mp.Process(target=work,args=(q,meta,B,nsam/22050,seed*1000+i,QN),daemon=True) for i in range(nw)];[w.start() for w in ws]
    ev=[(p,mp.Queue(8)) for p in(1,3)];es=[mp.Process(target=work,args=(x,dict(meta,real=[p],weight=[1.],preal=1.),B,nsam/22050,77+p+10*i,QN),daemon=True) for p,x in ev for i in(0,1,2)];[w.start() for w in es]
    import core,sound,look,blind
    torch.manual_seed(seed);r=random.Random(seed)
    real=torch.tensor(sound.decode('data/notes.xz'),device=dev);real=torch.cat([real]+[uneven(real) for _ in range(VAR)]);rn=real.shape[0];ron=torch.tensor(md['on'],device=dev).int().repeat(1+VAR);hit=sound.hit_bank(dev)
    sb,son=sound.synth_bank(P,dev,lay,seed=seed);W=torch.cat([real,sb,hit]);on=torch.cat([ron,son.int(),torch.zeros(len(hit),device=dev).int()]);del sb
    td=np.load('data/talk.npz');talk=torch.tensor(sound.decode('data/talk.xz')[0],device=dev).float()/32768/.08;talk_e=talk[int(td['split']):];talk=talk[:int(td['split'])]
    PB=sound.pedal_bank(dev,262144);ear=blind.Blind(dev);print('banks %.1f'%(time.time()-t0),flush=True)
    net=look.Look(**(eval(a['net']) if 'net' in a else {})).to(dev);print('weights',sum(p.numel() for p in net.parameters()),flush=True)
    old=look.Look().to(dev);print(old.load_state_dict(torch.load(a.get('old','look.pt'),map_location=dev,weights_only=False)['ema'],strict=False));old.eval()
    if 'init' in a:net.load_state_dict({k:v for k,v in torch.load(a['init'],map_location=dev,weights_only=False)['ema'].items() if k[0] not in a.get('drop','')},strict=False)
    new=[v for k,v in net.named_parameters() if k[0] in 'klm'];opt=torch.optim.AdamW([dict(params=[v for k,v in net.named_parameters() if k[0] not in 'klm'],x=1),dict(params=new,x=float(a.get('newlr',2)))],lr=lr,weight_decay=1e-4);ema={k:v.clone() for k,v in net.state_dict().items()}
    @torch.no_grad()
    def make(src,tk):
        R,ped,Q,C=src.get();y=sound.render(W,on,R,B,nsam)
        mild=(torch.rand(B,1,device=dev)<.6).float();y=core.level(sound.acoustics(y,torch.tensor(ped,device=dev),tk,PB,r,mild))*10**(sound.U(B,-4,4,dev)/20);O=ear(y)
        Q=torch.tensor(Q,device=dev);clip=Q[:,0].long();f=lambda c:Q[:,c].float()
        lnb=torch.randn(len(Q),device=dev)*.35
        x=look.features(y,clip,Q[:,1].round().long(),f(2),f(7),lnb)
        s=blind.said(O,clip,Q[:,1].round().long(),Q[:,2].long());hand=f(8)
        d=torch.cat([s.flatten(1),blind.usual(s,clip,hand,f(3),B)],1)
        return [*x,torch.tensor(C,device=dev),f(3),f(4)*100,f(5),f(6),d,Q[:,9].long(),f(10),f(2),mild[clip,0]]
    ready=queue.Queue(3);stop=threading.Event()
    main_s=torch.cuda.current_stream() if cuda else None
    def produce():
        s2=torch.cuda.Stream() if cuda else None;tb=time.time();sg=1
        with torch.no_grad(),(torch.cuda.stream(s2) if cuda else contextlib.nullcontext()):
            while not stop.is_set():
                if time.time()-tb>150:
                    sb,son=sound.synth_bank(P,dev,lay,seed=seed+777*sg);W[rn:rn+len(sb)]=sb;on[rn:rn+len(sb)]=son.int();del sb;tb=time.time();sg+=1
                z=make(q,talk)
                if cuda:[v.record_stream(main_s) for v in z];s2.synchronize()
                while not stop.is_set():
                    try:ready.put(z,timeout=1);break
                    except queue.Full:pass
    th=threading.Thread(target=produce,daemon=True);th.start();t1=time.time();st=0;acc=torch.zeros(3,device=dev);tl=time.time();maxst=int(a.get('steps',10**9))
    while True:
        el=(time.time()-t1)/60/mins
        if el>=1 or st>=maxst:break
        for g in opt.param_groups:g['lr']=lr*g['x']*min(1,(st+1)/300)*(lmin+(1-lmin)*.5*(1+math.cos(math.pi*el)))
        z=ready.get();o1,o,_,_=net(z[:3],z[3],z[8],z[9]);y,dt,c=z[4],z[5],z[6];w=(1+(1-y)*(c<4)*1.)*(1+.5*(c==2))
        l=look.loss(o,y,dt,w);l1=look.loss(o1,y,dt,w);opt.zero_grad(set_to_none=True);(l[0]+.25*l[1]+.3*(l1[0]+.25*l1[1])).backward();torch.nn.utils.clip_grad_norm_(net.parameters(),1.);opt.step()
        with torch.no_grad():
            ew=max(1e-3,1/(st+1))
            for k,v in net.state_dict().items():ema[k].lerp_(v,ew)
            acc+=torch.stack([l[0].detach(),l[1].detach(),l1[0].detach()])
        st+=1
        if st%250==0:print(st,'%.0fs %.1f/s'%(time.time()-t0,250/(time.time()-tl)),'%.4f %.4f alone %.4f'%tuple((acc/250).tolist()),flush=True);acc.zero_();tl=time.time()
        if st%2000==0:torch.save(dict(cfg=net.cfg,ema={k:v.cpu() for k,v in ema.items()},steps=st),out+'/look.pt')
    stop.set();th.join(timeout=10)
    torch.save(dict(cfg=net.cfg,ema={k:v.cpu() for k,v in ema.items()},steps=st),out+'/look.pt');print('done',st,flush=True)
    net.load_state_dict(ema);net.eval()
    for p,src in ev:
        O=[]
        with torch.no_grad():
            for _ in range(int(a.get('evaln',100))):
                z=make(src,talk_e);o1,o,pm,has=net(z[:3],z[3],z[8],z[9]);o0=old(z[:3],z[3],z[8]);ty,_=look.others(z[4][:,None],z[9])
                O.append(torch.cat([o,o1,o0,torch.stack(z[4:8],1),z[8][:,:4],has,pm,ty,torch.stack(z[10:13],1)],1).cpu())
        O=torch.cat(O).numpy();np.save(out+'/eval%d.npy'%p,O.astype(np.float16));print('PIANO kept out',p,len(O));table(O)
    for w in ws+es:w.terminate()
if __name__=='__main__':mp.set_start_method('spawn');main()
