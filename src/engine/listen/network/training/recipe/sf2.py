"""Minimal SoundFont 2 reader: preset zones to samples with root key, key range and velocity range."""
# minimal SoundFont 2 reader: preset zones -> samples with root key, key range, velocity range
import struct,numpy as np
def read(path):
    b=open(path,'rb').read();ch={}
    def walk(o,e):
        while o<e-8:
            i=b[o:o+4];n=struct.unpack('<I',b[o+4:o+8])[0]
            if i in(b'RIFF',b'LIST'):walk(o+12,o+8+n)
            else:ch[i.decode('latin1')]=(o+8,n)
            o+=8+n+(n&1)
    walk(0,len(b));g=lambda k:b[ch[k][0]:ch[k][0]+ch[k][1]]
    smpl=np.frombuffer(b,np.int16,ch['smpl'][1]//2,ch['smpl'][0])
    U=lambda k,f:list(struct.iter_unpack(f,g(k)))
    return dict(smpl=smpl,phdr=U('phdr','<20sHHHIII'),pbag=U('pbag','<HH'),pgen=U('pgen','<HH'),inst=U('inst','<20sH'),ibag=U('ibag','<HH'),igen=U('igen','<HH'),shdr=U('shdr','<20sIIIIIBbHH'))
def zones(bag,gen,a,z):
    out=[]
    for i in range(a,z):out.append(dict(gen[bag[i][0]:bag[i+1][0]]))
    return out
def preset(s,bank,num):
    for i,p in enumerate(s['phdr'][:-1]):
        if p[1]==num and p[2]==bank:
            res=[]
            for z in zones(s['pbag'],s['pgen'],p[3],s['phdr'][i+1][3]):
                if 41 not in z:continue
                k=z[41];I=s['inst'][k];g={}
                for j,q in enumerate(zones(s['ibag'],s['igen'],I[1],s['inst'][k+1][1])):
                    if 53 not in q:
                        if j==0:g=q
                        continue
                    m={**g,**q};h=s['shdr'][m[53]]
                    rg=lambda v:(v&255,v>>8) if v is not None else (0,127)
                    sg=lambda v:v-65536 if v>32767 else v
                    root=m.get(58,h[6]);root=h[6] if root>127 else root
                    kr=rg(m.get(43));vr=rg(m.get(44));pkr=rg(z.get(43));pvr=rg(z.get(44))
                    res.append(dict(name=h[0].split(b'\0')[0].decode('latin1'),inst=I[0].split(b'\0')[0].decode(),root=root,cents=sg(m.get(52,0))+100*sg(m.get(51,0))-0*h[7],corr=h[7],kr=(max(kr[0],pkr[0]),min(kr[1],pkr[1])),vr=(max(vr[0],pvr[0]),min(vr[1],pvr[1])),start=h[1],end=h[2],loop=(h[3],h[4]),sr=h[5],type=h[9],link=h[8],idx=m[53],scale=m.get(56,100),mode=m.get(54,0)))
            return p[0].split(b'\0')[0].decode(),res
if __name__=='__main__':
    import sys
    s=read(sys.argv[1]);print(sorted((p[2],p[1],p[0].split(b'\0')[0].decode('latin1')) for p in s['phdr'][:-1] if p[1]<8)[:40])
    for num in map(int,sys.argv[2:]):
        n,z=preset(s,0,num);print('==',num,n,len(z))
        for q in z[:400]:print(q['inst'],q['name'],q['root'],q['kr'],q['vr'],q['sr'],(q['end']-q['start'])/q['sr'],'loop at',(q['loop'][0]-q['start'])/q['sr'],q['mode'],q['cents'],q['corr'],q['type'])
