import * as fc from 'fast-check';
import { ipv4Bytes, ipv6Bytes, isLoopbackAddress, isPublicAddress } from './public-address.js';

describe('addresses that messages may be sent to', () => {
  it.each([
    '1.1.1.1',
    '8.8.8.8',
    '93.184.215.14',
    '172.15.255.255',
    '172.32.0.0',
    '2606:2800:21f:cb07:6820:80da:af6b:8b2c',
    '2a00::1',
  ])('%s lies in the public internet', (address) => expect(isPublicAddress(address)).toBe(true));

  it.each([
    ['0.0.0.0', 'this network'],
    ['10.0.0.1', 'private, RFC 1918'],
    ['100.64.0.1', 'shared, RFC 6598'],
    ['127.0.0.1', 'loopback'],
    ['127.255.255.254', 'loopback'],
    ['169.254.169.254', 'link-local, where clouds tell secrets'],
    ['172.16.0.1', 'private, RFC 1918'],
    ['172.31.255.255', 'private, RFC 1918'],
    ['192.0.0.8', 'protocol assignments'],
    ['192.0.2.1', 'documentation'],
    ['192.168.1.1', 'private, RFC 1918'],
    ['198.18.0.1', 'benchmarks'],
    ['203.0.113.9', 'documentation'],
    ['224.0.0.1', 'multicast'],
    ['255.255.255.255', 'broadcast'],
    ['::', 'unspecified'],
    ['::1', 'loopback'],
    ['::ffff:127.0.0.1', 'mapped loopback'],
    ['::ffff:8.8.8.8', 'mapped, however public'],
    ['::ffff:7f00:1', 'mapped loopback in hexadecimal'],
    ['64:ff9b::7f00:1', 'translated'],
    ['fc00::1', 'unique local'],
    ['fd12:3456::1', 'unique local'],
    ['fe80::1', 'link-local'],
    ['ff02::1', 'multicast'],
    ['2001::1', 'Teredo'],
    ['2001:db8::1', 'documentation'],
    ['2002:7f00:1::', '6to4 of loopback'],
  ])('%s does not: %s', (address) => expect(isPublicAddress(address)).toBe(false));

  it.each([
    '',
    'localhost',
    '2130706433',
    '0x7f.1',
    '127.1',
    '0177.0.0.1',
    '1.2.3.4.5',
    '256.1.1.1',
    '1:2:3',
    ':::',
    '1::2::3',
    'g::1',
  ])('%j is no address', (text) =>
    expect([isPublicAddress(text), ipv4Bytes(text), ipv6Bytes(text)]).toEqual([false, undefined, undefined]),
  );

  it('by hand: 172.16.0.0/12 ends at 172.31.255.255, since 31 = 0001 1111 and 16 = 0001 0000 share four bits', () => {
    expect([isPublicAddress('172.31.255.255'), isPublicAddress('172.32.0.0')]).toEqual([false, true]);
  });

  it('reads every IPv6 address however its zeros are written', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 65535 }), { minLength: 8, maxLength: 8 }), (groups) => {
        const bytes = groups.flatMap((group) => [group >> 8, group & 255]);
        expect(ipv6Bytes(groups.map((group) => group.toString(16)).join(':'))).toEqual(bytes);
        expect(
          ipv6Bytes(groups.map((group) => group.toString(16).padStart(4, '0').toUpperCase()).join(':')),
        ).toEqual(bytes);
      }),
      { seed: 5 },
    );
  });

  it('knows this machine', () => {
    expect(['127.0.0.1', '127.9.9.9', '::1'].map(isLoopbackAddress)).toEqual([true, true, true]);
    expect(['128.0.0.1', '::2', '::ffff:127.0.0.1'].map(isLoopbackAddress)).toEqual([false, false, false]);
  });
});
