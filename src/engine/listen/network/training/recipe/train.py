"""Trains one or more nets on the same batches.   python3 train.py nets=512:48:1,1,2,2 min=8.5 seed=1 out=DIR [init=a.pt] [eval=full|quick|no]"""
import sys,os,time,math,random,json,queue,threading,contextlib,collections,numpy as np,torch,torch.multiprocessing as mp
from play import Maker,HITS
a=dict(x.split('=',1) for x in sys.argv[1:])
TRAIN=[0,2,4,5,6];WEIGHT=[1.,1.,.8,.5,.7]      # pianos 1 and 3 are kept for evaluation
def work(q,meta,B,T,seed):
    m=Maker(meta,B,T,seed)
    while True:q.put(m.batch())
def main():
    t0=time.time();mins=float(a.get('min',8));B=int(a.get('B',32));dev=a.get('dev','cuda');seed=int(a.get('seed',1));out=a.get('out','.');lr=float(a.get('lr',3e-3));P=int(a.get('P',40));nsam=int(a.get('n',89600));lmin=float(a.get('lmin',.02))
    md=np.load('data/notes.npz');import lzma
    n0=len(md['on']);lay=2;meta=dict(tbl=md['tbl'],mid=md['mid'],nl=md['nl'],real=TRAIN,weight=WEIGHT,preal=float(a.get('preal',.7)),nsyn=P,lay=lay,syn0=n0,hit0=n0+P*80*lay)
    q=mp.Queue(24);ws=[mp.Process(target=work,args=(q,meta,B,nsam/22050,seed*1000+i),daemon=True) for i in range(int(a.get('workers',8)))];[w.start() for w in ws]
    import core,sound
    torch.manual_seed(seed);r=random.Random(seed);cuda=dev=='cuda'
    if cuda:torch.backends.cuda.matmul.allow_tf32=True;torch.backends.cudnn.allow_tf32=True
    real=torch.tensor(sound.decode('data/notes.xz'),device=dev);hit=sound.hit_bank(dev);print('decoded %.1f'%(time.time()-t0),flush=True)
    sb,son=sound.synth_bank(P,dev,lay,seed=seed);W=torch.cat([real,sb,hit]);on=torch.cat([torch.tensor(md['on'],device=dev).int(),son.int(),torch.zeros(len(hit),device=dev).int()]);del sb
    td=np.load('data/talk.npz');talk=torch.tensor(sound.decode('data/talk.xz')[0],device=dev).float()/32768/.08;talk=talk[:int(td['split'])]
    PB=sound.pedal_bank(dev,131072);print('banks %.1f'%(time.time()-t0),W.shape,flush=True)
    nets=[];init=[x for x in a.get('init','').split(',') if x]
    for i,sp in enumerate(a.get('nets','512:48:1,1,2,2').split(';')):
        h,C,d=sp.split(':');net=core.Net(int(h),int(C),[int(x) for x in d.split(',')]).to(dev);ck=None
        if i<len(init):ck=torch.load(init[i],map_location=dev,weights_only=False) if cuda else torch.load(init[i],map_location=dev);net.load_state_dict(ck['raw'])
        opt=torch.optim.AdamW(net.parameters(),lr=torch.tensor(lr,device=dev) if cuda else lr,weight_decay=1e-4,capturable=cuda)
        ema={k:v.to(dev).clone().float() for k,v in (ck['ema'] if ck else net.state_dict()).items()}
        nets.append(dict(net=net,opt=opt,ema=ema,acc=torch.zeros(5,device=dev),name='h%s_c%s_b%d'%(h,C,len(d.split(','))),steps=ck['steps'] if ck else 0));print(nets[-1]['name'],sum(p.numel() for p in net.parameters()),'MMAC/s %.1f'%net.macs(),flush=True)
    def save():
        for x in nets:torch.save(dict(cfg=x['net'].cfg,raw={k:v.cpu().clone() for k,v in x['net'].state_dict().items()},ema={k:v.cpu() for k,v in x['ema'].items()},steps=x['steps']),'%s/%s.pt'%(out,x['name']))
    st=0;tl=time.time();sg=1;lg=int(a.get('log',250));maxst=int(a.get('steps',10**9));hops=sorted({x['net'].hop for x in nets})
    main_stream=torch.cuda.current_stream() if cuda else None;ready=queue.Queue(3);stop=threading.Event();graphs=a.get('graph','1')=='1' and cuda;distil=a.get('distil')=='1';woff=float(a.get('woff',.5))
    @torch.no_grad()
    def make():
        R,E,ped,rng=q.get();y=sound.render(W,on,R,B,nsam)
        y=core.level(sound.acoustics(y,torch.tensor(ped,device=dev),talk,PB,r))*10**(sound.U(B,-9,9,dev)/20);f=core.features(y)
        E=torch.tensor(E,device=dev);k=torch.arange(80,device=dev);rg=torch.tensor(rng,device=dev);mask=((k[None]>=rg[:,:1])&(k[None]<rg[:,1:])).float()[None,None]
        return [*f,mask,*[v for h in hops for v in core.targets(E,B,core.frames(nsam,h),h,dev).values()]]
    TK=('on','off','om','lv','fr')
    def produce():
        """renders batches on its own CUDA stream while the main thread trains"""
        nonlocal sg
        s2=torch.cuda.Stream() if cuda else None;tb=time.time()
        with torch.no_grad(),(torch.cuda.stream(s2) if cuda else contextlib.nullcontext()):
            while not stop.is_set():
                if time.time()-tb>float(a.get('rebank',150)):
                    sb,son=sound.synth_bank(P,dev,lay,seed=seed+777*sg);W[n0:n0+len(sb)]=sb;on[n0:n0+len(sb)]=son.int();del sb;tb=time.time();sg+=1
                z=make()
                if cuda:
                    [v.record_stream(main_stream) for v in z];s2.synchronize()
                while not stop.is_set():
                    try:ready.put(z,timeout=1);break
                    except queue.Full:pass
    def step(x,z):
        net=x['net'];h=net.hop;mask=z[3];i=4+5*hops.index(h);tg=dict(zip(TK,z[i:i+5]))
        with torch.autocast('cuda' if cuda else 'cpu',torch.bfloat16,enabled=cuda,cache_enabled=False):o=net(z[:3],core.frames(nsam,h),mask)
        x['o']=o.detach();soft=torch.sigmoid(nets[0]['o'][0]) if distil and x is not nets[0] else None
        l=core.loss_fn(o,tg,mask,soft);Ls=l[0]+woff*l[1]+.3*l[2]+2*l[3]
        Ls.backward();torch.nn.utils.clip_grad_norm_(net.parameters(),1.);x['opt'].step()
        with torch.no_grad():
            for k,v in net.state_dict().items():
                if v.is_floating_point():x['ema'][k].lerp_(v,x['ew'])
            x['acc']+=torch.stack([*[v.detach() for v in l],Ls.detach()])
    for x in nets:x['ew']=torch.tensor(1.,device=dev)
    static=make()
    if graphs:
        s=torch.cuda.Stream();s.wait_stream(main_stream)
        with torch.cuda.stream(s):
            for x in nets:
                for g in x['opt'].param_groups:g['lr'].fill_(1e-5)
                for _ in range(3):x['opt'].zero_grad(set_to_none=True);step(x,static)
        main_stream.wait_stream(s);torch.cuda.synchronize()
        for x in nets:
            x['graph']=torch.cuda.CUDAGraph();x['opt'].zero_grad(set_to_none=True)
            with torch.cuda.graph(x['graph']):step(x,static)
            x['acc'].zero_()
        torch.cuda.synchronize();print('captured %.1f s'%(time.time()-t0),flush=True)
    th=threading.Thread(target=produce,daemon=True);th.start();past=collections.deque()
    t1=time.time();wait=0
    while True:
        el=(time.time()-t1)/60/mins
        if el>=1 or st>=maxst:break
        rate=lr*min(1,(st+1)/300)*(lmin+(1-lmin)*.5*(1+math.cos(math.pi*el)))
        if st==60:
            if cuda:torch.cuda.synchronize()
            tp=time.time();wait=0
        tw=time.time();z=ready.get();wait+=time.time()-tw
        if graphs:torch._foreach_copy_(static,z)
        for x in nets:
            x['steps']+=1;x['ew'].fill_(max(8e-4,1/(x['steps']+1)))
            for g in x['opt'].param_groups:
                if cuda:g['lr'].fill_(rate)
                else:g['lr']=rate
            if graphs:x['graph'].replay()
            else:x['opt'].zero_grad(set_to_none=True);step(x,z)
        st+=1
        if cuda:
            e=torch.cuda.Event();e.record();past.append(e)
            if len(past)>3:past.popleft().synchronize()
        if st==160:
            if cuda:torch.cuda.synchronize()
            print('ms a step %.1f, of it waiting for data %.1f'%((time.time()-tp)/100*1000,wait/100*1000),flush=True)
        if st%lg==0:
            now=time.time();print(st,'%.0fs %.1f/s'%(now-t0,lg/(now-tl)),' | '.join(x['name']+' '+' '.join('%.4f'%v for v in (x['acc']/lg).tolist()) for x in nets),flush=True);tl=now
            for x in nets:x['acc'].zero_()
            if st%(lg*4)==0:save()
    stop.set();th.join(timeout=10)
    save();print('done',st,'steps %.0f s'%(time.time()-t0),flush=True)
    for w in ws:w.terminate()
    if a.get('eval','full')!='no':
        import evaluate
        L=[]
        for x in nets:
            m=core.Net(**x['net'].cfg).to(dev);m.load_state_dict({k:(v if x['net'].state_dict()[k].is_floating_point() else v.long()) for k,v in x['ema'].items()});m.eval();L.append((x['name'],m))
        evaluate.run(L,out,dev,quick=a.get('eval')=='quick',study=a.get('study','0')=='1',budget=float(a.get('evalsec',100)))
if __name__=='__main__':mp.set_start_method('spawn');main()
