"""python3 train.py min=8 seed=1 out=DIR [init=look.pt]: trains the closer look and prints its table on the two pianos kept out"""
import sys,time,math,random,queue,threading,contextlib,lzma,numpy as np,torch,torch.multiprocessing as mp
from steps import Maker,COND
a=dict(x.split('=',1) for x in sys.argv[1:])
TRAIN=[0,2,4,5,6];WEIGHT=[1.,1.,.8,.5,.7]
def work(q,meta,B,T,seed,Q):
    m=Maker(meta,B,T,seed,Q)
    while True:q.put(m.batch())
def main():
    t0=time.time();mins=float(a.get('min',8));B=int(a.get('B',40));QN=int(a.get('Q',2048));dev=a.get('dev','cuda');cuda=dev=='cuda';seed=int(a.get('seed',1));out=a.get('out','.');lr=float(a.get('lr',2.5e-3));P=int(a.get('P',40));nsam=89600;lmin=.01
    md=np.load('data/notes.npz');n0=len(md['on']);lay=2;meta=dict(tbl=md['tbl'],mid=md['mid'],nl=md['nl'],real=TRAIN,weight=WEIGHT,preal=.7,nsyn=P,lay=lay,syn0=n0,hit0=n0+P*80*lay)
    nw=int(a.get('workers',10));q=mp.Queue(24);ws=[mp.Process(target=work,args=(q,meta,B,nsam/22050,seed*1000+i,QN),daemon=True) for i in range(nw)];[w.start() for w in ws]
    ev=[(p,mp.Queue(8)) for p in(1,3)];es=[mp.Process(target=work,args=(x,dict(meta,real=[p],weight=[1.],preal=1.),B,nsam/22050,77+p,QN),daemon=True) for p,x in ev];[w.start() for w in es]
    import core,sound,look,blind
    torch.manual_seed(seed);r=random.Random(seed)
    real=torch.tensor(sound.decode('data/notes.xz'),device=dev);hit=sound.hit_bank(dev)
    sb,son=sound.synth_bank(P,dev,lay,seed=seed);W=torch.cat([real,sb,hit]);on=torch.cat([torch.tensor(md['on'],device=dev).int(),son.int(),torch.zeros(len(hit),device=dev).int()]);del sb
    td=np.load('data/talk.npz');talk=torch.tensor(sound.decode('data/talk.xz')[0],device=dev).float()/32768/.08;talk_e=talk[int(td['split']):];talk=talk[:int(td['split'])]
    PB=sound.pedal_bank(dev,131072);ear=blind.Blind(dev);print('banks %.1f'%(time.time()-t0),flush=True)
    net=look.Look(**(eval(a['net']) if 'net' in a else {})).to(dev);print('weights',sum(p.numel() for p in net.parameters()),flush=True)
    if 'init' in a:net.load_state_dict(torch.load(a['init'],map_location=dev,weights_only=False)['ema'])
    opt=torch.optim.AdamW(net.parameters(),lr=lr,weight_decay=1e-4);ema={k:v.clone() for k,v in net.state_dict().items()}
    @torch.no_grad()
    def make(src,tk):
        R,ped,Q,C=src.get();y=sound.render(W,on,R,B,nsam)
        y=core.level(sound.acoustics(y,torch.tensor(ped,device=dev),tk,PB,r))*10**(sound.U(B,-4,4,dev)/20);O=ear(y)
        Q=torch.tensor(Q,device=dev);clip=Q[:,0].long();f=lambda c:Q[:,c].float()
        lnb=torch.randn(len(Q),device=dev)*.35
        x=look.features(y,clip,Q[:,1].round().long(),f(2),f(7),lnb)
        s=blind.said(O,clip,Q[:,1].round().long(),Q[:,2].long());hand=f(8)
        d=torch.cat([s.flatten(1),blind.usual(s,clip,hand,f(3),B)],1)
        return [*x,torch.tensor(C,device=dev),f(3),f(4)*100,f(5),f(6),d]
    ready=queue.Queue(3);stop=threading.Event()
    main_s=torch.cuda.current_stream() if cuda else None
    def produce():
        s2=torch.cuda.Stream() if cuda else None;tb=time.time();sg=1
        with torch.no_grad(),(torch.cuda.stream(s2) if cuda else contextlib.nullcontext()):
            while not stop.is_set():
                if time.time()-tb>150:
                    sb,son=sound.synth_bank(P,dev,lay,seed=seed+777*sg);W[n0:n0+len(sb)]=sb;on[n0:n0+len(sb)]=son.int();del sb;tb=time.time();sg+=1
                z=make(q,talk)
                if cuda:[v.record_stream(main_s) for v in z];s2.synchronize()
                while not stop.is_set():
                    try:ready.put(z,timeout=1);break
                    except queue.Full:pass
    th=threading.Thread(target=produce,daemon=True);th.start();t1=time.time();st=0;acc=torch.zeros(2,device=dev);tl=time.time();maxst=int(a.get('steps',10**9))
    while True:
        el=(time.time()-t1)/60/mins
        if el>=1 or st>=maxst:break
        for g in opt.param_groups:g['lr']=lr*min(1,(st+1)/300)*(lmin+(1-lmin)*.5*(1+math.cos(math.pi*el)))
        z=ready.get();o=net(z[:3],z[3],z[8]);y,dt,c=z[4],z[5],z[6];w=1+(1-y)*(c<4)*1.
        l=look.loss(o,y,dt,w);opt.zero_grad(set_to_none=True);(l[0]+.25*l[1]).backward();torch.nn.utils.clip_grad_norm_(net.parameters(),1.);opt.step()
        with torch.no_grad():
            ew=max(1e-3,1/(st+1))
            for k,v in net.state_dict().items():ema[k].lerp_(v,ew)
            acc+=torch.stack([l[0].detach(),l[1].detach()])
        st+=1
        if st%250==0:print(st,'%.0fs %.1f/s'%(time.time()-t0,250/(time.time()-tl)),'%.4f %.4f'%tuple((acc/250).tolist()),flush=True);acc.zero_();tl=time.time()
        if st%2000==0:torch.save(dict(cfg=net.cfg,ema={k:v.cpu() for k,v in ema.items()},steps=st),out+'/look.pt')
    stop.set();th.join(timeout=10)
    torch.save(dict(cfg=net.cfg,ema={k:v.cpu() for k,v in ema.items()},steps=st),out+'/look.pt');print('done',st,flush=True)
    net.load_state_dict(ema);net.eval()
    for (p,src) in ev:
        O=[]
        with torch.no_grad():
            for _ in range(int(a.get('evaln',100))):
                z=make(src,talk_e);o=net(z[:3],z[3],z[8]);O.append(torch.cat([o,torch.stack(z[4:8],1),z[8][:,:4],z[8][:,-4:]],1).cpu())
        O=torch.cat(O).numpy();np.save(out+'/eval%d.npy'%p,O.astype(np.float16));print('piano kept out',p,len(O))
        lo,y,dt,c,lv=O[:,0],O[:,3],O[:,4],O[:,5],O[:,6];e=(O[:,1]-dt)*10
        for k,nm in enumerate(('alone','chord','octave above','octave below','not written')):
            s=c==k;p1=lo[s&(y>.5)];p0=lo[s&(y<.5)]
            if len(p1)<50 or len(p0)<50:print(nm,'too few',len(p1),len(p0));continue
            row=[]
            for f in(.005,.01,.02,.05):
                th=np.quantile(p0,1-f);row.append('%.3f'%(p1>th).mean())
            bl=O[:,7];q0=bl[s&(y<.5)];q1=bl[s&(y>.5)];be=((O[:,8]-dt)*10)[s&(y>.5)&(bl>-.85)];print('   the blind ear alone: found at invented .5 1 2 5 %%: %s; at belief .65 found %.3f invented %.3f; when it found: SD %.2f |e| 50 %.2f 90 %.2f'%(' '.join('%.3f'%(q1>np.quantile(q0,1-f)).mean() for f in(.005,.01,.02,.05)),(q1>.62).mean(),(q0>.62).mean(),be.std(),*np.quantile(abs(be),[.5,.9])))
            ee2=e[s&(y>.5)&(bl>-.85)];print('   the look where the ear found: SD %.2f |e| 50 %.2f 90 %.2f'%(ee2.std(),*np.quantile(abs(ee2),[.5,.9])))
            ee=e[s&(y>.5)];b=np.exp(np.clip(O[:,2],-3,3))[s&(y>.5)]*10;sure=b<np.quantile(b,.9)
            print('%-13s struck %6d absent %5d  found at invented .5 1 2 5 %%: %s   thr2 %.2f  when: SD %.2f ms, |e| 50 %.2f 90 %.2f 95 %.2f; surest 90 %%: SD %.2f'%(nm,len(p1),len(p0),' '.join(row),np.quantile(p0,.98),ee.std(),*np.quantile(abs(ee),[.5,.9,.95]),ee[sure].std()))
        s=(c==2)&(y>.5);th=np.quantile(lo[(c==2)&(y<.5)],.98)
        for l0,l1 in((-30,-9),(-9,-6),(-6,-3),(-3,-1),(-1,1)):
            q=s&(lv>=l0)&(lv<l1)
            if q.sum()>30:print('  octave above, level %d..%d dB: found %.3f of %d'%(l0,l1,(lo[q]>th).mean(),q.sum()))
    for w in ws+es:w.terminate()
if __name__=='__main__':mp.set_start_method('spawn');main()
