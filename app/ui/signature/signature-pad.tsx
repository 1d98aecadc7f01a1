'use client';

import { useEffect, useId, useRef, useState, type PointerEvent } from 'react';
import { Button } from '@/app/ui/button/button';
import { useFieldAnswer } from '@/app/ui/form/form-answer';
import { Fault } from '@/app/ui/form/said';
import css from './signature.module.css';

const [width, height] = [720, 320];

/**
 * A hollow to sign in with a finger, a pen or the mouse. What was drawn goes with the form as a
 * picture of black strokes on white, so that it is kept and printed the same by day and evening.
 */
export function SignaturePad() {
  const id = useId();
  const canvas = useRef<HTMLCanvasElement>(null);
  const { typed, fault } = useFieldAnswer('drawing');
  const [drawing, setDrawing] = useState(typed ?? '');
  const isDown = useRef(false);
  const kept = useRef(typed ?? '');

  useEffect(() => wipe(canvas.current, kept.current), []);

  const put = (event: PointerEvent<HTMLCanvasElement>) => {
    isDown.current = true;
    event.currentTarget.setPointerCapture(event.pointerId);
    stroke(event, 'begin');
  };
  const draw = (event: PointerEvent<HTMLCanvasElement>) => {
    if (isDown.current) stroke(event, 'on');
  };
  const lift = () => {
    if (!isDown.current) return;
    isDown.current = false;
    setDrawing(canvas.current?.toDataURL('image/png') ?? '');
  };
  const clear = () => {
    wipe(canvas.current, '');
    setDrawing('');
  };
  return (
    <div className={css['pad']}>
      <p id={`${id}-hint`}>Sign in the field. It can be cleared and signed again.</p>
      <canvas
        ref={canvas}
        {...{ width, height }}
        role="img"
        aria-label={drawing ? 'Your drawn signature' : 'Empty field for a drawn signature'}
        aria-describedby={`${id}-hint`}
        className={css['field']}
        data-signed={drawing ? true : undefined}
        onPointerDown={put}
        onPointerMove={draw}
        onPointerUp={lift}
        onPointerCancel={lift}
      />
      <input type="hidden" name="drawing" value={drawing} readOnly />
      <Fault id={id} fault={fault} />
      <div className={css['under']}>
        <span role="status">{drawing ? 'Signed.' : 'Nothing is drawn yet.'}</span>
        <Button variant="quiet" onClick={clear}>
          Clear
        </Button>
      </div>
    </div>
  );
}

function wipe(canvas: HTMLCanvasElement | null, kept: string): void {
  const pen = canvas?.getContext('2d');
  if (!canvas || !pen) return;
  pen.fillStyle = 'white';
  pen.fillRect(0, 0, width, height);
  if (!kept) return;
  const earlier = new Image();
  earlier.onload = () => pen.drawImage(earlier, 0, 0);
  earlier.src = kept;
}

function stroke(event: PointerEvent<HTMLCanvasElement>, how: 'begin' | 'on'): void {
  const canvas = event.currentTarget;
  const pen = canvas.getContext('2d');
  if (!pen) return;
  const box = canvas.getBoundingClientRect();
  const x = ((event.clientX - box.left) * width) / box.width;
  const y = ((event.clientY - box.top) * height) / box.height;
  if (how === 'begin') {
    Object.assign(pen, { lineWidth: 4, lineCap: 'round', lineJoin: 'round', strokeStyle: 'black' });
    pen.beginPath();
    pen.moveTo(x, y);
  }
  pen.lineTo(x, y);
  pen.stroke();
}
